/** The titles of a table's columns: what they name, and the unit that they give. */
import type { LengthUnit } from "../../../units/feet-inch.ts";

/** Letters and figures alone: how a title is spaced, accented and cased says nothing. */
export function reducedTitle(title: string): string {
  return title
    .normalize("NFD")
    .replace(/[^\p{L}\p{N}]/gu, "")
    .toLowerCase();
}

/** A title without the unit behind it. */
export function withoutUnit(title: string): string {
  return title.replace(/\([^)]*\)\s*$/, "");
}

/** The unit that a title gives in brackets; undefined where it gives none that we know. */
export function unitIn(title: string): LengthUnit | undefined {
  const unit = /\((mm|cm|m|in|po|ft|pi)\)\s*$/i.exec(title)?.[1]?.toLowerCase();
  return unit === "po" ? "in" : unit === "pi" ? "ft" : (unit as LengthUnit | undefined);
}

/** @param usual the unit where the title gives none */
export function unitOf(title: string, usual: LengthUnit = "mm"): LengthUnit {
  return unitIn(title) ?? usual;
}
