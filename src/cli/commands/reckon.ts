/** `outerleaf reckon`: lists the equations, or works one with the numbers given. */

import type { Equation } from "../../equations/equation.ts";
import { EQUATIONS } from "../../equations/index.ts";
import { nearest } from "../../project/nearest.ts";
import { type Message, message } from "../../text/message.ts";
import { type Reader, say, sayNumber } from "../../text/say.ts";
import { type Answer, isRefusal, type Refusal } from "../answer.ts";
import type { Job } from "../job.ts";
import type { ReckonJson } from "../shapes/reckon.ts";

export async function command({ words, reader }: Job): Promise<Answer> {
  const [name, ...typed] = words;
  if (name === undefined) return listed(reader);
  const equation = EQUATIONS.find((one) => one.name === name);
  if (equation === undefined) return unknownEquation(name);
  const given = readInputs(equation, typed);
  return isRefusal(given) ? given : worked(equation, given, reader);
}

function listed(reader: Reader): Answer {
  const json: ReckonJson = {
    schemaVersion: 1,
    equations: EQUATIONS.map(({ name, formula, inputs, result, source }) => ({
      name,
      formula,
      inputs: inputs.map((input) => ({ ...input, range: [...input.range] })),
      result,
      source,
    })),
  };
  const text = EQUATIONS.map((equation) =>
    [
      `${equation.name} [${equation.result.unit}]`,
      `    ${equation.formula}`,
      ...equation.inputs.map(({ key, unit, range }) => `    ${key} [${unit}] ${rangeText(range, reader)}`),
      `    ${sourceText(equation, reader)}`,
      "",
    ].join("\n"),
  ).join("\n");
  return { exit: 0, json, text };
}

function rangeText([least, most]: readonly [number, number], reader: Reader): string {
  return `${plain(least, reader)} … ${plain(most, reader)}`;
}

/** As many figures as the number needs: ranges reach from millionths to millions. */
function plain(value: number, { language }: Reader): string {
  const text = String(value).replace("-", "−");
  return language === "fr" ? text.replace(".", ",") : text;
}

function sourceText({ source: { document, clause } }: Equation, reader: Reader): string {
  const source = [document, clause].filter((part) => part !== undefined);
  return say(message("cli.finding.source", { source }), reader);
}

function unknownEquation(name: string): Refusal {
  const names = EQUATIONS.map((equation) => equation.name);
  const near = nearest(name, names);
  return {
    refused: message("cli.refused.equation-unknown", { name }),
    hint: near === undefined ? message("cli.hint.equations") : message("cli.hint.meant", { near }),
  };
}

/** Numbers by their keys, each once, none unknown, none missing. */
function readInputs(equation: Equation, typed: readonly string[]): Record<string, number> | Refusal {
  const { name } = equation;
  const keys = equation.inputs.map(({ key }) => key);
  const withUnits = equation.inputs.map(({ key, unit }) => `${key} [${unit}]`);
  const given: Record<string, number> = {};
  for (const word of typed) {
    const at = word.indexOf("=");
    const key = word.slice(0, at);
    const value = word.slice(at + 1);
    const hint: Message = message("cli.hint.inputs", { name, keys: withUnits });
    if (at < 1) return { refused: message("cli.refused.input-form", { word }), hint };
    if (!keys.includes(key)) {
      const near = nearest(key, keys);
      return {
        refused: message("cli.refused.input-unknown", { name, key }),
        hint: near === undefined ? hint : message("cli.hint.meant", { near }),
      };
    }
    if (Object.hasOwn(given, key)) return { refused: message("cli.refused.input-twice", { key }), hint };
    const number = Number(value.replace(",", "."));
    if (value.trim() === "" || !Number.isFinite(number)) {
      return { refused: message("cli.refused.input-number", { key, value }), hint };
    }
    given[key] = number;
  }
  const missing = keys.filter((key) => !Object.hasOwn(given, key));
  if (missing.length === 0) return given;
  return {
    refused: message("cli.refused.input-missing", { name, missing }),
    hint: message("cli.hint.inputs", { name, keys: withUnits }),
  };
}

function worked(equation: Equation, given: Readonly<Record<string, number>>, reader: Reader): Answer {
  const { name, formula, inputs, result, source } = equation;
  const reckoned = equation.reckon(given);
  const outside = reckoned.ok ? [] : [...reckoned.outside];
  const substituted = substitute(formula, given);
  const json: ReckonJson = {
    schemaVersion: 1,
    name,
    formula,
    inputs: inputs.map((input) => ({
      ...input,
      range: [...input.range],
      value: given[input.key] ?? Number.NaN,
    })),
    outcome: reckoned.ok ? "pass" : "cannot evaluate",
    outside,
    substituted,
    result: { unit: result.unit, ...(reckoned.ok && { value: reckoned.value }) },
    source,
  };
  const beyond = inputs.filter(
    ({ key, range: [least, most] }) => outside.includes(key) && !within(given[key], least, most),
  );
  const last = reckoned.ok
    ? `= ${sayNumber(reckoned.value, undefined, reader)} ${result.unit === "1" ? "" : result.unit}`.trimEnd()
    : beyond.length === 0
      ? say(
          message("cli.reckon.together", { keys: outside, condition: equation.together?.condition ?? "" }),
          reader,
        )
      : beyond
          .map(({ key, unit, range }) =>
            say(
              message("cli.reckon.outside", {
                key,
                unit,
                value: plain(given[key] ?? Number.NaN, reader),
                range: rangeText(range, reader),
              }),
              reader,
            ),
          )
          .join("\n");
  const lines = [
    `${name} [${result.unit}]`,
    `  ${formula}`,
    ...inputs.map(({ key, unit }) => `    ${key} = ${plain(given[key] ?? Number.NaN, reader)} [${unit}]`),
    `  ${substituted}`,
    last,
    sourceText(equation, reader),
  ];
  const text = `${lines.join("\n")}\n`;
  return { exit: reckoned.ok ? 0 : 1, json, text };
}

function within(value: number | undefined, least: number, most: number): boolean {
  return value !== undefined && value >= least && value <= most;
}

/** The formula with its numbers; a negative one in brackets, so that signs do not run together. */
function substitute(formula: string, given: Readonly<Record<string, number>>): string {
  return formula.replace(/[A-Za-z][A-Za-z0-9]*/g, (word) => {
    const value = given[word];
    if (value === undefined) return word;
    return value < 0 ? `(−${-value})` : String(value);
  });
}
