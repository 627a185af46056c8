/**
 * Turns messages into sentences. Templates hold `{name}` or `{name:form}`:
 *   mm        a length with its unit, in the reader's display units        950 mm, 3'-1 3/8"
 *   len       the same without the unit, as dimensions are written         950
 *   gap       a gap or joint: 0.1 mm steps in millimetres                  9.1 mm
 *   fig       a number as short as a reader can work with: three decimals, or four figures of a small one
 *   both      a length in millimetres, for who reads feet and inches in those first
 *   math      arithmetic as a rule wrote it, with the decimal sign of the language
 *   n0 … n3   a number with that many decimals, the decimal sign by language
 *   term      a word of `data/text/terms.json`: the value is the end of its key
 *   plural|one {}|many {}   the singular or plural by the number, `{}` standing for it
 */
import { printLength } from "../units/feet-inch.ts";
import { type Language, template } from "./catalogue.ts";
import type { Message, MessageValue } from "./message.ts";

export interface Reader {
  readonly language: Language;
  readonly units: "mm" | "feet-inch";
  /** Feet-inch steps: 16 prints sixteenths of an inch. */
  readonly denominator: 16 | 32;
}

export const ENGLISH_MM: Reader = { language: "en", units: "mm", denominator: 16 };

const DECIMAL_SIGN: Readonly<Record<Language, "." | ",">> = { en: ".", fr: "," };

/** The sentence of a message. A key that is missing prints as the key in brackets: the text tests refuse it. */
export function say(message: Message, reader: Reader): string {
  const text = template(message.key, reader.language);
  if (text === undefined) return `[${message.key}]`;
  return text.replace(/\{(\w+)(?::((?:[^{}]|\{\})+))?\}/g, (_, name: string, form: string | undefined) => {
    const value = message.values[name];
    return value === undefined ? `[${message.key}.${name}]` : print(value, form, reader);
  });
}

function print(value: MessageValue, form: string | undefined, reader: Reader): string {
  if (Array.isArray(value)) return value.map((one: MessageValue) => print(one, form, reader)).join(", ");
  if (typeof value === "object") return say(value as Message, reader);
  if (form === "term") return say({ key: `term.${value}`, values: {} }, reader);
  if (typeof value === "string") return form === "math" ? sayArithmetic(value, reader) : value;
  return printNumber(value as number, form, reader);
}

function printNumber(value: number, form: string | undefined, reader: Reader): string {
  if (form === "mm" || form === "len" || form === "gap") {
    const length = sayLength(value, reader, form === "gap" ? 1 : undefined);
    return form === "len" || reader.units === "feet-inch" ? length : `${length} mm`;
  }
  if (form === "fig") return sayFigure(value, reader);
  if (form === "both") {
    const millimetres = `${sayFigure(value, reader)} mm`;
    return reader.units === "mm" ? millimetres : `${sayLength(value, reader)} (${millimetres})`;
  }
  if (form?.startsWith("plural|")) {
    const [, one = "", many = ""] = form.split("|");
    // French counts 0 and anything under 2 as singular; English 1 alone.
    const singular = reader.language === "fr" ? Math.abs(value) < 2 : value === 1;
    return (singular ? one : many).replace("{}", sayNumber(value, undefined, reader));
  }
  const decimals = form?.match(/^n([0-3])$/)?.[1];
  return sayNumber(value, decimals === undefined ? undefined : Number(decimals), reader);
}

/** A length in the reader's units without the word "mm"; whole and half millimetres print as short as they are. */
export function sayLength(mm: number, reader: Reader, decimals?: 0 | 1 | 2): string {
  if (reader.units === "feet-inch") {
    return printLength(mm, { display: "feet-inch", denominator: reader.denominator });
  }
  const places = decimals ?? (Math.abs(mm * 10 - Math.round(mm * 10)) > 1e-6 ? 2 : 1);
  return sayNumber(Number(mm.toFixed(places)), undefined, reader);
}

/** A number with the language's decimal sign; without `decimals` it prints as short as it is. */
export function sayNumber(value: number, decimals: number | undefined, reader: Reader): string {
  const text = decimals === undefined ? String(Number(value.toFixed(6))) : value.toFixed(decimals);
  const plain = /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
  return plain.replace(".", DECIMAL_SIGN[reader.language]).replace("-", "−");
}

/** Three decimals at least, and four figures of a small number; no trailing zeros. */
export function sayFigure(value: number, { language }: Reader): string {
  if (value === 0) return "0";
  const decimals = Math.min(20, Math.max(3, 3 - Math.floor(Math.log10(Math.abs(value)))));
  const text = value.toFixed(decimals).replace(/\.?0+$/, "");
  return text.replace(".", DECIMAL_SIGN[language]).replace("-", "−");
}

/** Arithmetic as a rule wrote it, with the reader's decimal sign. */
export function sayArithmetic(text: string, { language }: Reader): string {
  return text.replace(/(\d)\.(\d)/g, `$1${DECIMAL_SIGN[language]}$2`);
}
