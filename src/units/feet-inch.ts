/** Reading and printing lengths, in millimetres or feet, inches and fractions. */
export { type LengthErrorCode, type LengthUnit, type ParsedLength, parseLength } from "./parse-length.ts";
export { type LengthStyle, printLength } from "./print-length.ts";
