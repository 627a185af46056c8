/** What sheets are made from, and what one is before it has its place in the set. */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Finding } from "../../findings/finding.ts";
import type { SheetKind } from "../../project/schema/sheets.ts";
import type { ProofInput } from "../../proof/context.ts";
import type { Scene, SceneText } from "../../scene/model.ts";
import type { Sheet } from "../../scene/sheet.ts";
import type { TableRoom } from "../../scene/table.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import type { Language } from "../../text/catalogue.ts";
import type { Message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import type { PaperName } from "../../units/paper-sizes.ts";
import type { Tape } from "./cells.ts";
import type { DrawMemo } from "./draw-memo.ts";

/** A design, as far as it is drawn. */
export type Drawable = Pick<ProofInput, "project" | "facade" | "demands">;

export interface DrawingFacts {
  readonly design: Drawable;
  /** Everything found, cutting included; what has a place is shown there. */
  readonly findings: readonly Finding[];
  readonly reader: Reader;
  /** Sheets of cutting are made where it is there, those of quantities and the order where take-off is. */
  readonly plan?: CutPlan | undefined;
  readonly takeoff?: Takeoff | undefined;
  /** These kinds alone, whatever the project asks for. */
  readonly only?: readonly SheetKind[] | undefined;
}

/** What a kind of sheet is drawn from. */
export interface KindFacts extends Omit<DrawingFacts, "reader"> {
  /** Scenes are drawn alike for readers of every language. */
  readonly reader: Tape;
  /** For the book alone: its pages are words, and are filled with those that are read. */
  readonly language: Language;
  readonly memo: DrawMemo;
  readonly paper: PaperName;
  /** Marks that differ from the revision before. */
  readonly changed: ReadonlySet<string>;
  /** What the usual paper leaves for a table under its caption. */
  readonly room: TableRoom;
}

/** Views that belong together, before they have paper. */
export interface Drawing {
  /** Of its file, without what it ends in. */
  readonly name: string;
  readonly type: Message;
  /** Gone through once, each when the one before has its place. */
  readonly scenes: Iterable<Scene>;
  /** Face that it shows. */
  readonly face?: string;
  /** In place of the set's. */
  readonly paper?: PaperName;
  /** What other sheets lead to on it, by name. */
  readonly holds?: readonly string[];
}

/** As much of a drawing as stands on one sheet. */
export interface DrawingPart extends Drawing {
  readonly scenes: readonly Scene[];
}

/** A drawing in its set: what an index says of it. */
export interface NumberedDrawing extends DrawingPart {
  readonly kind: SheetKind;
  readonly number: number;
  readonly title: SceneText;
}

/** The same without what is drawn. */
export type ListedDrawing = Omit<NumberedDrawing, "scenes">;

/** A drawing on its paper, for any renderer. */
export interface DrawingPaper {
  /** Of its file, without what it ends in. */
  readonly name: string;
  readonly kind: SheetKind;
  readonly title: SceneText;
  /** Of the title block. */
  readonly label: string;
  /** A scene alone where it fits no paper. */
  readonly drawing: Sheet | Scene;
}
