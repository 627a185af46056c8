/**
 * The text of a DXF file as its groups: a code line and a value line each, parted into sections, entities and blocks.
 * Group codes after the published DXF reference: 0 begins a thing, 2 names it, 9 names a header variable, 5 is a handle, 8 a layer.
 */
import type { Point } from "../../../geometry/point.ts";

export interface Group {
  readonly code: number;
  readonly value: string;
}

export interface Entity {
  readonly type: string;
  readonly groups: readonly Group[];
}

export interface Block {
  /** The point of the block that stands where it is put in. */
  readonly base: Point;
  readonly entities: readonly Entity[];
}

export interface DxfFile {
  /** First value of each variable of the header. */
  readonly header: ReadonlyMap<string, string>;
  readonly blocks: ReadonlyMap<string, Block>;
  readonly entities: readonly Entity[];
}

export type ReadDxf =
  | { readonly ok: true; readonly file: DxfFile }
  /** The line of the text, from 1, where it stops being DXF; `end` where it breaks off. */
  | { readonly ok: false; readonly fault: "binary" | "group" | "end"; readonly line: number };

export function readDxf(text: string): ReadDxf {
  if (text.includes("\0")) return { ok: false, fault: "binary", line: 1 };
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
  const groups: Group[] = [];
  for (let at = 0; at + 1 < lines.length; at += 2) {
    const code = (lines[at] as string).trim();
    if (!/^-?\d{1,4}$/.test(code)) return { ok: false, fault: "group", line: at + 1 };
    groups.push({ code: Number(code), value: (lines[at + 1] as string).trim() });
    if (code === "0" && groups.at(-1)?.value === "EOF") return { ok: true, file: parted(groups) };
  }
  return { ok: false, fault: "end", line: lines.length };
}

function parted(groups: readonly Group[]): DxfFile {
  const things = thingsOf(groups);
  const section = (name: string): Entity[] => {
    const from = things.findIndex(({ type, groups: own }) => type === "SECTION" && textOf(own, 2) === name);
    const to = things.findIndex(({ type }, i) => i > from && type === "ENDSEC");
    return from < 0 ? [] : things.slice(from, to < 0 ? undefined : to);
  };
  return {
    header: headerOf(section("HEADER")[0]?.groups ?? []),
    blocks: blocksOf(section("BLOCKS").slice(1)),
    entities: section("ENTITIES").slice(1),
  };
}

function thingsOf(groups: readonly Group[]): Entity[] {
  const things: { type: string; groups: Group[] }[] = [];
  for (const group of groups) {
    if (group.code === 0) things.push({ type: group.value, groups: [] });
    else things.at(-1)?.groups.push(group);
  }
  return things;
}

function headerOf(groups: readonly Group[]): Map<string, string> {
  const header = new Map<string, string>();
  groups.forEach(({ code, value }, i) => {
    if (code === 9) header.set(value, groups[i + 1]?.value ?? "");
  });
  return header;
}

function blocksOf(things: readonly Entity[]): Map<string, Block> {
  const blocks = new Map<string, Block>();
  let open: { name: string; base: Point; entities: Entity[] } | undefined;
  for (const thing of things) {
    if (thing.type === "BLOCK") {
      const { groups } = thing;
      open = {
        name: textOf(groups, 2) ?? "",
        base: [numberOf(groups, 10) ?? 0, numberOf(groups, 20) ?? 0],
        entities: [],
      };
      blocks.set(open.name, open);
    } else if (thing.type === "ENDBLK") open = undefined;
    else open?.entities.push(thing);
  }
  return blocks;
}

/** The first value of a code. */
export function textOf(groups: readonly Group[], code: number): string | undefined {
  return groups.find((group) => group.code === code)?.value;
}

export function numberOf(groups: readonly Group[], code: number): number | undefined {
  const text = textOf(groups, code);
  const value = Number(text);
  return text === undefined || text === "" || !Number.isFinite(value) ? undefined : value;
}
