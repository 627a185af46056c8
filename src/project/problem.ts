/** Findings about the project file: each names the file, the field, the value found and the mend. */
import type { RuleCode } from "../findings/codes.ts";
import {
  type Finding,
  finding,
  type Location,
  type Outcome,
  type PatchOperation,
} from "../findings/finding.ts";
import { type Message, type MessageValue, message } from "../text/message.ts";
import { isGroup, type Path, pointerOf, valueAt } from "./pointer.ts";

/** A project file that is being read. */
export interface SourceFile {
  readonly name: string;
  /** Its JSON as it stands. */
  readonly document: unknown;
}

export interface ProblemFields {
  readonly code: RuleCode;
  /** `fail` unless told: the file cannot be used as it is. */
  readonly outcome?: Outcome;
  readonly path: Path;
  /** The sentence; `file`, `path` and `found` are put in here. */
  readonly says: Message;
  readonly hint?: Message;
  readonly edit?: readonly PatchOperation[];
}

export function problem(file: SourceFile, fields: ProblemFields): Finding {
  const { code, outcome = "fail", path, says, hint, edit } = fields;
  const values = { file: file.name, path: pointerOf(path), found: shown(valueAt(file.document, path)) };
  return finding({
    code,
    outcome,
    where: locate(file.document, path),
    says: message(says.key, { ...values, ...says.values }),
    ...(hint === undefined ? {} : { hint: message(hint.key, { ...values, ...hint.values }) }),
    ...(edit === undefined ? {} : { edit }),
  });
}

/** The pointer, with the ids of the face, zone and opening that it leads through. */
function locate(document: unknown, path: Path): Location {
  const idAt = (length: number): string | undefined => {
    const owner = valueAt(document, path.slice(0, length));
    return path.length >= length && isGroup(owner) && typeof owner.id === "string" ? owner.id : undefined;
  };
  const face = path[0] === "faces" ? idAt(2) : undefined;
  const zone = path[0] === "faces" && path[2] === "zones" ? idAt(4) : undefined;
  const opening = path[0] === "faces" && path[2] === "openings" ? idAt(4) : undefined;
  return {
    path: pointerOf(path),
    ...(face === undefined ? {} : { face }),
    ...(zone === undefined ? {} : { zone }),
    ...(opening === undefined ? {} : { opening }),
  };
}

const LONGEST_SHOWN = 60;

/** A value of the file as a sentence shows it. */
export function shown(value: unknown): MessageValue {
  if (value === undefined) return message("project.value.nothing");
  if (Array.isArray(value)) {
    const plain = value.length <= 4 && value.every((entry) => typeof entry !== "object");
    return plain
      ? `[${value.map((entry) => plainText(entry)).join(", ")}]`
      : message("project.value.list", { count: value.length });
  }
  if (isGroup(value)) return message("project.value.group");
  return plainText(value);
}

function plainText(value: unknown): string {
  if (typeof value !== "string") return String(value);
  return value.length > LONGEST_SHOWN ? `"${value.slice(0, LONGEST_SHOWN)}…"` : `"${value}"`;
}
