/** The worker that cuts, as a function. */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { DrawingSheet } from "../../output/drawings/drawing-sheets.ts";
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

export interface Cut {
  /** Undefined where the verifier refused it: the findings tell. */
  readonly plan: CutPlan | undefined;
  readonly findings: readonly Finding[];
  readonly takeoff: Takeoff;
  readonly drawings?: readonly DrawingSheet[];
  readonly designed?: { readonly design: Design; readonly findings: readonly Finding[] };
}

/** Undefined where the program failed. */
export type CutReply = Cut | undefined;

export interface Cutter {
  cut(request: CutRequest): Promise<CutReply>;
}

export function createCutter(): Cutter {
  return {
    cut: latestOf<CutRequest, CutReply>(
      () => new Worker(new URL("./cut.worker.ts", import.meta.url), { type: "module" }),
    ),
  };
}
