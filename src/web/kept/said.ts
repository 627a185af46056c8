/** Places and values of the file in the words of the page, for lists of what differs. */
import { isGroup } from "../../project/pointer.ts";
import type { Place } from "../../project/versions.ts";
import { template } from "../../text/catalogue.ts";
import { sayNumber } from "../../text/say.ts";
import type { Words } from "../words.ts";

/** Lists whose entries have names: what follows one in a place is an entry's. */
const LISTS: readonly string[] = [
  "faces",
  "openings",
  "penetrations",
  "lines",
  "zones",
  "rods",
  "claddings",
  "buildUps",
  "layers",
  "survey",
  "boards",
  "sheets",
  "battens",
  "packers",
  "screws",
  "retired",
];

/** Fields that hold lengths, by their keys; a number under any other key is none. */
const LENGTHS: readonly string[] = [
  "x",
  "y",
  "diameter",
  "depth",
  "width",
  "widths",
  "gap",
  "frameProjection",
  "toBoundary",
  "outline",
  "ground",
  "from",
  "to",
  "kerf",
  "fence",
  "lift",
  "lineTolerance",
  "roofHeight",
  "thickness",
  "length",
];

/** As many parts of a group are told. */
const MOST_PARTS = 4;

/** The things that a place leads through, and what of the last it is: in words where the page has some, else by its key. */
export function sayPlace(place: Place, { w, reader }: Words): string {
  const [trail, fields]: [string[], string[]] = [[], []];
  let list: string | undefined;
  for (const [at, name] of place.entries()) {
    const before = place[at - 1];
    const isEntry = before !== undefined && LISTS.includes(before) && fields.at(-1) === before;
    if (isEntry) {
      list = before;
      fields.length = 0;
      trail.push(name);
    } else fields.push(name);
  }
  const path = fields.join(".");
  const known = [`${list ?? "file"}.${path}`, path].find(
    (one) => template(`page.kept.at.${one}`, reader.language) !== undefined,
  );
  const field = known === undefined ? path : w(`page.kept.at.${known}`);
  const things = trail.join(" › ");
  if (things === "") return field;
  return field === "" ? things : w("page.kept.place", { things, field });
}

/** @param place tells whether its numbers are lengths */
export function sayValue(value: unknown, place: Place, words: Words): string {
  const { w, reader } = words;
  if (value === undefined) return w("page.kept.value-none");
  if (typeof value === "boolean") return w(value ? "page.kept.value-yes" : "page.kept.value-no");
  if (typeof value === "number") {
    const key = place.findLast((name) => !/^\d+$/.test(name)) ?? "";
    return LENGTHS.includes(key) ? w("page.kept.value-mm", { value }) : sayNumber(value, undefined, reader);
  }
  if (typeof value === "string") {
    return template(`term.${value}`, reader.language) === undefined ? value : w(`term.${value}`);
  }
  if (Array.isArray(value)) {
    if (value.every(isPlain)) return value.map((one) => sayValue(one, place, words)).join(" – ");
    return w("page.kept.value-list", { count: value.length });
  }
  if (!isGroup(value)) return String(value);
  const parts = Object.entries(value).filter(
    ([, part]) => isPlain(part) || (Array.isArray(part) && part.length <= 2 && part.every(isPlain)),
  );
  const told = parts
    .filter(([key]) => key !== "id")
    .slice(0, MOST_PARTS)
    .map(
      ([key, part]) =>
        `${sayPlace([...place, key], words)
          .split(": ")
          .at(-1)} ${sayValue(part, [key], words)}`,
    );
  return told.length === 0 ? w("page.kept.value-group") : told.join(" · ");
}

function isPlain(value: unknown): boolean {
  return typeof value !== "object" || value === null;
}
