/** A finding as the published shapes tell it. */
import { RULES } from "../../findings/codes.ts";
import type { Choice, Finding, PatchOperation } from "../../findings/finding.ts";
import { type Waiver, waiverOf } from "../../project/waivers.ts";
import type { Message, MessageValue } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { mapped } from "../pieces.ts";
import type { FindingJson } from "./shapes/finding.ts";

export interface FindingJsonOptions {
  readonly reader: Reader;
  readonly waivers?: readonly Waiver[] | undefined;
}

/** Findings as the file of an issue holds them. */
export function findingsListed(
  findings: readonly Finding[],
  options: FindingJsonOptions,
): { readonly schemaVersion: 1; readonly findings: Iterable<FindingJson> } {
  return { schemaVersion: 1, findings: mapped(findings, (one) => findingJson(one, options)) };
}

export function findingJson(finding: Finding, { reader, waivers }: FindingJsonOptions): FindingJson {
  const { code, outcome, provisional, where, says, hint, demand, limit, unit, ratio, working, source } =
    finding;
  const { edit, choices, figures } = finding;
  const waiver = waiverOf(finding, waivers);
  return {
    code,
    rule: RULES[code],
    outcome,
    provisional,
    ...(waiver && { waived: { who: waiver.who, when: waiver.when, why: waiver.why } }),
    where: whereJson(where),
    says: say(says, reader),
    key: says.key,
    values: valuesJson(says, reader),
    ...(hint && { hint: say(hint, reader) }),
    ...(demand !== undefined && { demand }),
    ...(limit !== undefined && { limit }),
    ...(unit !== undefined && { unit }),
    // A demand over a limit of nothing has no ratio that JSON can hold.
    ...(ratio !== undefined && Number.isFinite(ratio) && { ratio }),
    ...(working && {
      working: {
        formula: working.formula,
        inputs: working.inputs.map(({ meaning, ...input }) => ({ ...input, meaning: say(meaning, reader) })),
        substituted: working.substituted,
      },
    }),
    source: sourceJson(source),
    ...(figures && { figures: [...figures] }),
    ...(edit && { edit: editJson(edit) }),
    ...(choices && { choices: choices.map((choice) => choiceJson(choice, reader)) }),
  };
}

function choiceJson({ says, edit }: Choice, reader: Reader): NonNullable<FindingJson["choices"]>[number] {
  return {
    says: say(says, reader),
    key: says.key,
    values: valuesJson(says, reader),
    ...(edit && { edit: editJson(edit) }),
  };
}

function editJson(edit: readonly PatchOperation[]): NonNullable<FindingJson["edit"]> {
  return edit.map((operation) => ({ ...operation }));
}

function sourceJson({ kind, document, clause }: Finding["source"]): FindingJson["source"] {
  return { kind, ...(document !== undefined && { document }), ...(clause !== undefined && { clause }) };
}

function whereJson({ marks, at, ...ids }: Finding["where"]): FindingJson["where"] {
  return { ...ids, ...(marks && { marks: [...marks] }), ...(at && { at: [...at] }) };
}

function valuesJson({ values }: Message, reader: Reader): FindingJson["values"] {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [name, plain(value, reader)]));
}

type PlainValue = FindingJson["values"][string];

function plain(value: MessageValue, reader: Reader): PlainValue {
  if (Array.isArray(value)) return value.map((one: MessageValue) => plain(one, reader));
  if (typeof value === "object") return say(value as Message, reader);
  return value as string | number;
}
