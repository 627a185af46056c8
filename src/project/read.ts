/** Reads a project file: the project, or everything that keeps it from being one. */
import { type Finding, finding } from "../findings/finding.ts";
import { type Message, message } from "../text/message.ts";
import { checkProject } from "./check.ts";
import { type JsonFault, type JsonFaultKind, parseJson } from "./json.ts";
import { migrate, OLDER_VERSIONS } from "./migrations.ts";
import { parseProject } from "./parse.ts";
import { isGroup } from "./pointer.ts";
import { problem, type SourceFile, shown } from "./problem.ts";
import type { ReadMemo } from "./read-memo.ts";
import type { Project } from "./schema/project.ts";
import { SCHEMA_VERSION } from "./schema/version.ts";
import { shapeProblems } from "./shape.ts";
import { unknownKeyFindings } from "./unknown-keys.ts";

export type ReadResult =
  | {
      readonly ok: true;
      /** The JSON as it stands, brought up to the present version; keys that we do not know are kept. */
      readonly document: unknown;
      readonly project: Project;
      /** What deserves attention and hinders nothing. */
      readonly findings: readonly Finding[];
    }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/**
 * Reads the text of a project file. Never throws: whatever is wrong comes back as findings, every problem that can be
 * seen at once.
 * @param fileName as the messages name it
 */
export function readProject(text: string, fileName: string): ReadResult {
  // U+FEFF in front is a byte order mark, which some editors write; a NUL or U+FFFD means that this is no UTF-8 text.
  const plain = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (/[\0\uFFFD]/.test(plain)) return { ok: false, findings: [notText(fileName)] };
  const parsed = parseJson(plain);
  if (!parsed.ok) return { ok: false, findings: parsed.faults.map((fault) => jsonProblem(fault, fileName)) };
  return readDocument(parsed.value, fileName);
}

/** Reads a project from its parsed JSON, as after an edit; with a memo what the edit left alone is not read again. */
export function readDocument(document: unknown, fileName: string, memo?: ReadMemo): ReadResult {
  const file: SourceFile = { name: fileName, document };
  if (!looksLikeProject(document)) return { ok: false, findings: [notAProject(file)] };
  const { schemaVersion } = document;
  if (schemaVersion === SCHEMA_VERSION || schemaVersion === undefined) return validate(file, [], memo);
  if (!OLDER_VERSIONS.includes(schemaVersion as number)) return { ok: false, findings: [wrongVersion(file)] };
  const now = { name: fileName, document: migrate(document, schemaVersion as number) };
  return validate(now, [broughtUp(now, schemaVersion as number)], memo);
}

function validate(file: SourceFile, before: readonly Finding[], memo: ReadMemo | undefined): ReadResult {
  const noted = [...before, ...unknownKeyFindings(file, memo)];
  const shape = parseProject(file.document, memo);
  const problems = shape.success
    ? checkProject(file, shape.data)
    : shape.error.issues.flatMap((issue) => shapeProblems(file, issue));
  if (!shape.success || problems.some(({ outcome }) => outcome === "fail")) {
    return { ok: false, findings: [...problems, ...noted] };
  }
  return { ok: true, document: file.document, project: shape.data, findings: [...problems, ...noted] };
}

/** Fields of which a project has at least one; other JSON files have none of them. */
const MARKS_OF_A_PROJECT = ["schemaVersion", "faces", "claddings", "buildUps"] as const;

function looksLikeProject(document: unknown): document is Record<string, unknown> {
  return isGroup(document) && MARKS_OF_A_PROJECT.some((key) => Object.hasOwn(document, key));
}

function notAProject(file: SourceFile): Finding {
  const hint = message("project.hint.new");
  if (!isGroup(file.document)) {
    return problem(file, { code: "F002", path: [], says: message("project.not-a-group"), hint });
  }
  const keys = Object.keys(file.document)
    .slice(0, 6)
    .map((key) => shown(key));
  const says = message("project.not-a-project", {
    keys: keys.length === 0 ? message("project.value.nothing") : keys,
  });
  return problem(file, { code: "F002", path: [], says, hint });
}

function wrongVersion(file: SourceFile): Finding {
  const found = (file.document as Record<string, unknown>).schemaVersion;
  const path = ["schemaVersion"];
  const known = [...OLDER_VERSIONS, SCHEMA_VERSION].map(String);
  const says = message("project.version-unknown", { known });
  if (typeof found === "number" && Number.isInteger(found) && found > SCHEMA_VERSION) {
    return problem(file, { code: "F003", path, says, hint: message("project.hint.newer-program") });
  }
  const edit =
    typeof found === "string" && known.includes(found.trim())
      ? { edit: [{ op: "replace" as const, path: "/schemaVersion", value: Number(found) }] }
      : {};
  return problem(file, {
    code: "F003",
    path,
    says,
    hint: message("project.hint.version", { version: SCHEMA_VERSION }),
    ...edit,
  });
}

function broughtUp(file: SourceFile, from: number): Finding {
  return problem(file, {
    code: "F027",
    outcome: "attention",
    path: ["schemaVersion"],
    says: message("project.brought-up", { from, to: SCHEMA_VERSION }),
    hint: message("project.hint.save"),
  });
}

function notText(fileName: string): Finding {
  return finding({
    code: "F022",
    outcome: "fail",
    where: {},
    says: message("project.not-text", { file: fileName }),
    hint: message("project.hint.utf8"),
  });
}

const FAULTS: Readonly<Record<JsonFaultKind, { readonly says: Message; readonly hint: Message }>> = {
  empty: { says: message("project.json.empty"), hint: message("project.hint.new") },
  end: { says: message("project.json.end"), hint: message("project.json.hint.end") },
  "comma-too-many": {
    says: message("project.json.comma-too-many"),
    hint: message("project.json.hint.comma-too-many"),
  },
  "comma-missing": {
    says: message("project.json.comma-missing"),
    hint: message("project.json.hint.comma-missing"),
  },
  "colon-missing": {
    says: message("project.json.colon-missing"),
    hint: message("project.json.hint.colon-missing"),
  },
  "key-expected": {
    says: message("project.json.key-expected"),
    hint: message("project.json.hint.key-expected"),
  },
  "value-expected": {
    says: message("project.json.value-expected"),
    hint: message("project.json.hint.value-expected"),
  },
  number: { says: message("project.json.number"), hint: message("project.json.hint.number") },
  comment: { says: message("project.json.comment"), hint: message("project.json.hint.comment") },
  quotes: { says: message("project.json.quotes"), hint: message("project.json.hint.quotes") },
  "text-open": { says: message("project.json.text-open"), hint: message("project.json.hint.text-open") },
  escape: { says: message("project.json.escape"), hint: message("project.json.hint.escape") },
  more: { says: message("project.json.more"), hint: message("project.json.hint.more") },
  "key-twice": { says: message("project.json.key-twice"), hint: message("project.json.hint.key-twice") },
  depth: { says: message("project.json.depth"), hint: message("project.json.hint.depth") },
};

function jsonProblem({ kind, line, column, path, found }: JsonFault, file: string): Finding {
  const { says, hint } = FAULTS[kind];
  return finding({
    code: kind === "key-twice" ? "F028" : "F001",
    outcome: "fail",
    where: { path },
    says: message(says.key, { file, path, found, line, column }),
    hint,
  });
}
