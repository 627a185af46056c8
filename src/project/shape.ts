/** Turns what the schema refuses into findings with the value found and the mend. */
import type * as z from "zod";
import type { Finding, PatchOperation } from "../findings/finding.ts";
import { type Message, message } from "../text/message.ts";
import { type LengthErrorCode, parseLength } from "../units/feet-inch.ts";
import { nearest } from "./nearest.ts";
import { isGroup, type Path, pointerOf, valueAt } from "./pointer.ts";
import { problem, type SourceFile, shown } from "./problem.ts";
import { PICTURE_NAME } from "./schema/values.ts";
import { rangeAt } from "./schema-at.ts";
import { unknownKeysOf } from "./unknown-keys.ts";

type Issue = z.core.$ZodIssue;

/** The findings of one issue; a union's issue is told as the issues of the member that was meant. */
export function shapeProblems(file: SourceFile, issue: Issue, above: Path = []): Finding[] {
  const path = [...above, ...(issue.path as (string | number)[])];
  const found = valueAt(file.document, path);
  if (found === undefined) return [missing(file, path, wantedBy(issue))];
  if (issue.code === "invalid_union") return unionProblems(file, issue, path);
  if (issue.code === "invalid_value") return [notAmong(file, path, issue.values)];
  if (issue.code === "invalid_type") return [wrongType(file, path, typeWord(issue.expected))];
  if (issue.code === "too_small" || issue.code === "too_big") {
    return [
      typeof found === "number" || issue.origin === "number"
        ? outOfRange(file, path)
        : wrongCount(file, path, issue),
    ];
  }
  if (issue.code === "invalid_format") {
    const says = message("project.wrong-form");
    const hint = message(`project.hint.${formOf(issue)}`);
    return [problem(file, { code: "F026", path, says, hint })];
  }
  return [notALength(file, path)];
}

/** How the text is to be written. */
function formOf({ format, pattern }: z.core.$ZodIssueInvalidStringFormat): "date" | "picture" | "id" {
  if (format === "date") return "date";
  return pattern === String(PICTURE_NAME) ? "picture" : "id";
}

function unionProblems(file: SourceFile, issue: z.core.$ZodIssueInvalidUnion, path: Path): Finding[] {
  const found = valueAt(file.document, path);
  if ("discriminator" in issue && issue.errors.length === 0) {
    return [notAmong(file, path, "options" in issue ? (issue.options as string[]) : [])];
  }
  const simple = flat(issue).some((one) => one.code === "invalid_type" && one.expected === "number");
  if (!isGroup(found) || simple) return [wrongSimple(file, path, flat(issue))];
  const kindIssues = issue.errors.map((member) =>
    member.find((one) => one.path.length === 1 && one.path[0] === "kind"),
  );
  const fitting = issue.errors.filter((_, i) => kindIssues[i] === undefined);
  const best = fitting.sort((a, b) => a.length - b.length)[0];
  if (best !== undefined) return best.flatMap((inner) => shapeProblems(file, inner, path));
  const words = kindIssues.flatMap((kind) => (kind?.code === "invalid_value" ? kind.values : []));
  const kindPath = [...path, "kind"];
  if (found.kind === undefined) return [missing(file, kindPath, message("project.wanted.text"))];
  return [notAmong(file, kindPath, [...new Set(words)])];
}

/** A union of simple values: lengths as numbers or text, the ends of a face, the fractions of an inch. */
function wrongSimple(file: SourceFile, path: Path, issues: readonly Issue[]): Finding {
  const found = valueAt(file.document, path);
  const words = issues.flatMap((one) => (one.code === "invalid_value" ? one.values : []));
  const types = issues.flatMap((one) => (one.code === "invalid_type" ? [one.expected] : []));
  const takesLength = types.includes("number");
  if (types.includes("object")) return wrongType(file, path, message("project.wanted.group"));
  if (!takesLength) return notAmong(file, path, words);
  if (typeof found === "number") return outOfRange(file, path);
  if (typeof found !== "string") return wrongType(file, path, message("project.wanted.length"));
  return words.length > 0 ? notAmong(file, path, words, true) : notALength(file, path);
}

/** The issues that a union's members have with the value itself, not with what is inside it. */
function flat(issue: z.core.$ZodIssueInvalidUnion): Issue[] {
  const own = issue.errors.flat().filter(({ path }) => path.length === 0);
  return own.flatMap((inner) => (inner.code === "invalid_union" ? flat(inner) : [inner]));
}

function missing(file: SourceFile, path: Path, wanted: Message): Finding {
  const key = String(path.at(-1));
  const owner = valueAt(file.document, path.slice(0, -1));
  const says = message("project.missing", { key });
  const strange = isGroup(owner) ? unknownKeysOf(file.document, path.slice(0, -1)) : [];
  const near = nearest(key, strange);
  if (near === undefined) {
    return problem(file, { code: "F004", path, says, hint: message("project.hint.add", { key, wanted }) });
  }
  const owners = path.slice(0, -1);
  const edit: PatchOperation[] = [
    { op: "remove", path: pointerOf([...owners, near]) },
    { op: "add", path: pointerOf(path), value: valueAt(file.document, [...owners, near]) },
  ];
  return problem(file, {
    code: "F004",
    path,
    says,
    hint: message("project.hint.rename", { key, near }),
    edit,
  });
}

function wantedBy(issue: Issue): Message {
  if (issue.code === "invalid_type") return typeWord(issue.expected);
  if (issue.code === "invalid_value")
    return message("project.wanted.word", { words: issue.values.map(String) });
  if (issue.code !== "invalid_union") return message("project.wanted.text");
  if ("options" in issue) return message("project.wanted.word", { words: issue.options as string[] });
  const words = flat(issue).flatMap((one) => (one.code === "invalid_value" ? one.values.map(String) : []));
  return words.length > 0 ? message("project.wanted.word", { words }) : message("project.wanted.length");
}

function typeWord(expected: string): Message {
  if (expected === "string") return message("project.wanted.text");
  if (expected === "number") return message("project.wanted.number");
  if (expected === "int") return message("project.wanted.whole-number");
  if (expected === "boolean") return message("project.wanted.yes-or-no");
  if (expected === "object") return message("project.wanted.group");
  return message("project.wanted.list");
}

function wrongType(file: SourceFile, path: Path, wanted: Message): Finding {
  const found = valueAt(file.document, path);
  if (typeof found === "number" && !Number.isFinite(found)) return outOfRange(file, path);
  const asNumber =
    typeof found === "string" && found.trim() !== "" ? Number(found.replace(",", ".")) : Number.NaN;
  const mends = wanted.key === "project.wanted.number" && Number.isFinite(asNumber);
  return problem(file, {
    code: "F005",
    path,
    says: message("project.wrong-type", { wanted }),
    hint: mends
      ? message("project.hint.unquote", { number: String(asNumber) })
      : message("project.hint.replace", { wanted }),
    ...(mends ? { edit: [{ op: "replace", path: pointerOf(path), value: asNumber }] } : {}),
  });
}

function notAmong(file: SourceFile, path: Path, values: readonly unknown[], orLength = false): Finding {
  const found = valueAt(file.document, path);
  const words = values.map(String);
  const near = typeof found === "string" ? nearest(found, words) : undefined;
  const code = typeof found === typeof values[0] ? (typeof found === "number" ? "F006" : "F007") : "F005";
  const nearHint =
    near === undefined
      ? message("project.hint.words", { words })
      : message("project.hint.nearest", { near, words });
  return problem(file, {
    code,
    path,
    says: message("project.not-among"),
    hint: orLength ? message("project.hint.or-length", { words: nearHint }) : nearHint,
    ...(near === undefined ? {} : { edit: [{ op: "replace", path: pointerOf(path), value: near }] }),
  });
}

function outOfRange(file: SourceFile, path: Path): Finding {
  const { least, most, above } = rangeAt(file.document, path);
  const from =
    above !== undefined && (least === undefined || above >= least)
      ? message("project.range.above", { above })
      : least;
  const says = message("project.out-of-range");
  if (from === undefined && most === undefined) {
    return problem(file, { code: "F006", path, says, hint: message("project.hint.finite") });
  }
  const parts = [
    ...(from === undefined
      ? []
      : [typeof from === "number" ? message("project.range.least", { least: from }) : from]),
    ...(most === undefined ? [] : [message("project.range.most", { most })]),
  ];
  return problem(file, { code: "F006", path, says, hint: message("project.hint.range", { parts }) });
}

function wrongCount(
  file: SourceFile,
  path: Path,
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
): Finding {
  const found = valueAt(file.document, path);
  const wanted = Number(issue.code === "too_small" ? issue.minimum : issue.maximum);
  if (typeof found === "string") {
    return found === "" && wanted === 1
      ? problem(file, {
          code: "F006",
          path,
          says: message("project.no-letters"),
          hint: message("project.hint.not-empty"),
        })
      : problem(file, {
          code: "F026",
          path,
          says: message("project.wrong-form"),
          hint: message("project.hint.letters", { wanted }),
        });
  }
  const count = Array.isArray(found) ? found.length : 0;
  const says = message("project.wrong-count", { count, found: shown(found) });
  const hint =
    issue.exact === true
      ? message("project.hint.count-exact", { wanted })
      : issue.code === "too_small"
        ? message("project.hint.count-least", { wanted })
        : message("project.hint.count-most", { wanted });
  return problem(file, { code: "F006", path, says, hint });
}

const LENGTH_HINTS: Readonly<Record<LengthErrorCode, Message>> = {
  empty: message("project.length.empty"),
  "not-a-length": message("project.length.not-a-length"),
  "unknown-unit": message("project.length.unknown-unit"),
  "two-decimal-signs": message("project.length.two-decimal-signs"),
  "digits-not-grouped": message("project.length.digits-not-grouped"),
  "fraction-needs-inches": message("project.length.fraction-needs-inches"),
  "zero-denominator": message("project.length.zero-denominator"),
  "inches-carry": message("project.length.inches-carry"),
  "part-of-foot-beside-inches": message("project.length.part-of-foot-beside-inches"),
  "out-of-range": message("project.length.out-of-range"),
};

function notALength(file: SourceFile, path: Path): Finding {
  const parsed = parseLength(String(valueAt(file.document, path)), "mm");
  const hint = LENGTH_HINTS[parsed.ok ? "not-a-length" : parsed.error.code];
  return problem(file, { code: "F024", path, says: message("project.not-a-length"), hint });
}
