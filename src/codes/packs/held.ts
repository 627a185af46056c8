/** Resistances of screws as every pack writes them, and those that a data sheet declares. */
import type { Basis, Source } from "../../findings/finding.ts";
import type { FigureValue } from "../rule-value.ts";
import { weaker } from "../rule-value.ts";
import type { HeldAnswer, ScrewAsked, TimberDemand } from "./pack.ts";

export function held(fields: {
  newton: number;
  basis: Basis;
  formula: string;
  substituted: string;
  source: Source;
}): HeldAnswer {
  return { known: true, ...fields };
}

export function unknown(key: string): HeldAnswer {
  return { known: false, key: `structure.lack.${key}` };
}

export function weakest(...all: readonly Basis[]): Basis {
  return all.reduce(weaker, "given");
}

type DeclaredValue = "withdrawalNPerMm" | "pullThroughN" | "shearN" | "tensionN";

/** A declared value on the level of the pack's loads, times a length where it is for a millimetre; undefined where none is declared. */
export function declared(
  { screw }: ScrewAsked,
  timber: TimberDemand,
  { value, lengthMm }: { readonly value: DeclaredValue; readonly lengthMm?: number },
): HeldAnswer | undefined {
  const sheet = screw.declared;
  const printed = sheet?.[value];
  if (!sheet || printed === undefined) return undefined;
  const { characteristic } = timber;
  const factor: FigureValue | undefined =
    sheet.level === "design" ? { value: 1, basis: "given", figures: [] } : characteristic;
  if (!factor) return unknown("level");
  const length = lengthMm === undefined ? "" : ` · ${round(lengthMm)}`;
  return held({
    newton: printed * (lengthMm ?? 1) * factor.value,
    basis: weakest(sheet.basis, factor.basis),
    formula: lengthMm === undefined ? "R · k" : "R · l · k",
    substituted: `${round(printed)}${length} · ${round(factor.value)}`,
    source: { kind: "your data sheet" },
  });
}

/** The thread that holds: what is in the timber, at most what is threaded (mm). */
export function threadIn({ screw, biteMm }: ScrewAsked): { lengthMm: number; basis: Basis } {
  const thread = screw.declared?.threadLength;
  return thread === undefined
    ? { lengthMm: biteMm, basis: "typical" }
    : { lengthMm: Math.min(biteMm, thread), basis: "derived" };
}

/** Diameter at the root of the thread (mm). */
export function rootOf({ screw, coreShare }: ScrewAsked): { rootMm: number; basis: Basis } {
  const root = screw.declared?.rootDiameter;
  return root === undefined
    ? { rootMm: screw.diameter * coreShare.value, basis: coreShare.basis }
    : { rootMm: root, basis: "given" };
}

export function round(value: number): number {
  return Math.round(value * 1000) / 1000;
}
