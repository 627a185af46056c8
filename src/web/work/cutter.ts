/** The worker that cuts, as a function. */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { DrawingSheet, LeftOut } from "../../output/drawings/drawing-sheets.ts";
import type { SheetKind } from "../../project/schema/sheets.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import type { Reader } from "../../text/say.ts";
import { latestOf } from "./latest.ts";

export interface CutRequest {
  readonly name: string;
  readonly document: unknown;
  /** For whom the drawings are made; none are made where absent. */
  readonly drawFor?: Reader;
  /** Of the drawings, these kinds alone. */
  readonly drawOnly?: readonly SheetKind[];
  /** Whether the design is wanted as well. */
  readonly withDesign?: boolean;
}

/** Without its picture where that is the one that was sent last. */
export type SentSheet = DrawingSheet | Omit<DrawingSheet, "svg">;

/** What the worker posts. */
export type CutAnswer = (Omit<Cut, "drawings"> & { readonly drawings?: readonly SentSheet[] }) | undefined;

export interface Cut {
  /** Undefined where the verifier refused it: the findings tell. */
  readonly plan: CutPlan | undefined;
  readonly findings: readonly Finding[];
  readonly takeoff: Takeoff;
  readonly drawings?: readonly DrawingSheet[];
  /** Of the drawings that the project leaves out. */
  readonly leftOut?: readonly LeftOut[];
  readonly designed?: { readonly design: Design; readonly findings: readonly Finding[] };
}

/** Undefined where the program failed. */
export type CutReply = Cut | undefined;

export interface Cutter {
  cut(request: CutRequest): Promise<CutReply>;
}

export function createCutter(): Cutter {
  const ask = latestOf<CutRequest, CutAnswer>(
    () => new Worker(new URL("./cut.worker.ts", import.meta.url), { type: "module" }),
  );
  const whole = wholeSheets();
  return { cut: async (request) => whole(await ask(request)) };
}

/** Puts the pictures back that were sent before. Every answer passes here once for each who asked, in its order. */
function wholeSheets(): (answer: CutAnswer) => CutReply {
  const held = new Map<string, string>();
  return (answer) => {
    if (!answer) return undefined;
    const { drawings, ...rest } = answer;
    if (!drawings) return rest;
    return {
      ...rest,
      drawings: drawings.map((sheet): DrawingSheet => {
        const svg = "svg" in sheet ? sheet.svg : (held.get(sheet.name) as string);
        held.set(sheet.name, svg);
        return { ...sheet, svg };
      }),
    };
  };
}
