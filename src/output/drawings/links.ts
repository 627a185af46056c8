/** Links between sheets, once every sheet has its number. */
import type { Item, Scene, TextItem } from "../../scene/model.ts";
import type { DrawMemo } from "./draw-memo.ts";
import type { ListedDrawing } from "./facts.ts";

interface Target {
  /** Of the sheet. */
  readonly name: string;
  readonly number: number;
}

/** Sheets by their names, and by the scenes that stand on them. */
export type Targets = ReadonlyMap<string, Target>;

/** A sheet of a set and the scenes on it, by id. */
export interface Shown extends Pick<ListedDrawing, "name" | "number"> {
  readonly shows: readonly string[];
}

export function targetsOf(set: readonly Shown[]): Targets {
  const targets = new Map<string, Target>();
  for (const { name, number } of set) targets.set(name, { name, number });
  for (const { name, number, shows } of set) {
    for (const id of shows) if (!targets.has(id)) targets.set(id, { name, number });
  }
  return targets;
}

/** In place of the number of a sheet that is not in the set. */
const NO_SHEET = "–";

/**
 * The scenes with their links leading to sheets of this set, and the numbers of these in words that tell one. What leads to a sheet
 * that is left out leads nowhere.
 */
export function linkedScenes(
  scenes: readonly Scene[],
  { targets, memo }: { readonly targets: Targets; readonly memo: DrawMemo },
): readonly Scene[] {
  memo.byThemselves(scenes);
  return scenes.map((scene) => {
    const own = new Map(
      scene.items.flatMap((item) =>
        item.kind === "text" && item.link !== undefined && !isSettled(item, targets)
          ? [[item.link, targets.get(item.link)] as const]
          : [],
      ),
    );
    return own.size === 0 ? scene : memo.recall(linked, { scene, leads: [...own] });
  });
}

/** Whether the text already leads where it should, and tells no number. */
function isSettled({ link = "", text }: TextItem, targets: Targets): boolean {
  return targets.get(link)?.name === link && (typeof text === "string" || !("sheet" in text.values));
}

interface From {
  readonly scene: Scene;
  readonly leads: readonly (readonly [link: string, to: Target | undefined])[];
}

function linked({ scene, leads }: From): Scene {
  const targets = new Map(leads);
  return { ...scene, items: scene.items.map((item) => withLink(item, targets)) };
}

function withLink(item: Item, targets: ReadonlyMap<string, Target | undefined>): Item {
  if (item.kind !== "text" || item.link === undefined || !targets.has(item.link)) return item;
  const target = targets.get(item.link);
  const { link: _, text, ...rest } = item;
  const sheet = target ? String(target.number) : NO_SHEET;
  const told =
    typeof text !== "string" && "sheet" in text.values
      ? { ...text, values: { ...text.values, sheet } }
      : text;
  return { ...rest, text: told, ...(target && { link: target.name }) };
}
