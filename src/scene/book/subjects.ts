/** Under which subject of the calculation book a rule stands. */
import type { RuleCode } from "../../findings/codes.ts";
import type { Subject } from "./model.ts";

type ProofCode = Extract<RuleCode, `P${string}`>;

const OF_PROOF: Readonly<Record<ProofCode, Subject>> = {
  P001: "air",
  P002: "light",
  P003: "light",
  P004: "movement",
  P005: "water",
  P006: "water",
  P007: "screws",
  P008: "fire",
  P009: "durability",
  P010: "site",
  P011: "screws",
  P012: "water",
  P013: "movement",
  P014: "air",
  P015: "movement",
  P016: "handling",
  P017: "light",
  P018: "movement",
  P019: "site",
  P020: "light",
  P021: "light",
  P030: "water",
  P031: "water",
  P032: "water",
  P033: "water",
  P034: "air",
  P035: "air",
  P036: "air",
  P037: "heat",
  P038: "durability",
  P039: "durability",
  P040: "durability",
  P041: "fire",
  P042: "durability",
  P043: "water",
  P044: "file",
  P045: "structure",
  P046: "structure",
  P047: "structure",
  P048: "structure",
  P049: "structure",
  P050: "structure",
  P051: "structure",
  P052: "structure",
  P053: "structure",
  P054: "structure",
};

/** Rules of setting-out that speak of a subject of their own. */
const OF_SETTING_OUT: Partial<Record<RuleCode, Subject>> = {
  S003: "look",
  S005: "look",
  S008: "screws",
  S009: "screws",
  S010: "screws",
  S011: "screws",
  S016: "screws",
  S017: "screws",
  S018: "water",
};

export function subjectOf(code: RuleCode): Subject {
  if (isProof(code)) return OF_PROOF[code];
  const own = OF_SETTING_OUT[code];
  if (own) return own;
  if (code.startsWith("M")) return "site";
  return code.startsWith("S") ? "setting-out" : code.startsWith("C") ? "cutting" : "file";
}

function isProof(code: RuleCode): code is ProofCode {
  return Object.hasOwn(OF_PROOF, code);
}
