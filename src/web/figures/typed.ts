/** What a reader types of a figure, made a value of the form that the reference data has it in. */
import type { Figure, RangeFigure, Statement } from "../../catalogue/figure.ts";
import type { OwnFigure } from "../../catalogue/own-figures.ts";
import { type Reader, sayNumber } from "../../text/say.ts";

export type FigureRecord = Figure | RangeFigure | Statement;

/** A field of the form: the bounds of a span, the value itself, or the word of a class. */
export type FieldName = "value" | "min" | "max" | "word";

export type Typed = Readonly<Partial<Record<FieldName, string>>>;

export function fieldsOf(record: FigureRecord): FieldName[] {
  if ("key" in record) return ["word"];
  if (typeof record.value === "number") return ["value"];
  const { min, max } = record.value;
  return [...(min === undefined ? [] : (["min"] as const)), ...(max === undefined ? [] : (["max"] as const))];
}

/** The fields as they stand before anything is typed. */
export function shownOf(value: OwnFigure["value"] | undefined, record: FigureRecord, reader: Reader): Typed {
  const number = (one: number | undefined): string =>
    one === undefined ? "" : sayNumber(one, undefined, reader);
  if ("key" in record) return { word: typeof value === "string" ? value : record.key };
  if (typeof record.value === "number") return { value: typeof value === "number" ? number(value) : "" };
  const span =
    typeof value === "number" ? { min: value, max: value } : typeof value === "object" ? value : {};
  return { min: number(span.min), max: number(span.max) };
}

/** The value typed; undefined where a field holds no number. */
export function typedValue(typed: Typed, record: FigureRecord): OwnFigure["value"] | undefined {
  if ("key" in record) return typed.word;
  if (typeof record.value === "number") return numberIn(typed.value);
  const bounds = fieldsOf(record).map((name) => [name, numberIn(typed[name])] as const);
  return bounds.every(([, value]) => value !== undefined) ? Object.fromEntries(bounds) : undefined;
}

/** With either decimal sign, and either minus. */
function numberIn(text = ""): number | undefined {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  const value = plain === "" ? Number.NaN : Number(plain);
  return Number.isFinite(value) ? value : undefined;
}
