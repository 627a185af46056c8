/**
 * The worker that cuts, as a function: it tells of better and better plans on the way, and a newer question ends the search for an
 * older one, whose askers get the newer answer.
 */
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { DrawingSheet, LeftOut } from "../../output/drawings/drawing-sheets.ts";
import type { SheetKind } from "../../project/schema/sheets.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import type { Reader } from "../../text/say.ts";

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

/** A request as it is posted. */
export interface CutAsk extends CutRequest {
  readonly id: number;
  /** Whether plans on the way are wanted. */
  readonly onTheWay: boolean;
}

/** Without its picture where that is the one that was sent last. */
export type SentSheet = DrawingSheet | Omit<DrawingSheet, "svg">;

export type CutAnswer = (Omit<Cut, "drawings"> & { readonly drawings?: readonly SentSheet[] }) | undefined;

/** What the worker posts, any number of plans on the way before the last. */
export interface CutPost {
  readonly id: number;
  readonly last: boolean;
  readonly answer: CutAnswer;
}

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
  /** @param onTheWay told of the first plan and of better ones until the last, which is the answer; none of them has drawings */
  cut(request: CutRequest, onTheWay?: (cut: Cut) => void): Promise<CutReply>;
}

export function createCutter(): Cutter {
  const whole = wholeSheets();
  let worker: Worker | undefined;
  let id = 0;
  let resolves: ((reply: CutReply) => void)[] = [];
  let tell: ((cut: Cut) => void) | undefined;
  const hear = ({ data }: MessageEvent<CutPost>): void => {
    // The pictures of an answer that nobody waits for any longer count as sent.
    const reply = whole(data.answer);
    if (data.id !== id) return;
    if (!data.last) {
      if (reply) tell?.(reply);
      return;
    }
    const waiting = resolves;
    resolves = [];
    tell = undefined;
    for (const resolve of waiting) resolve(reply);
  };
  return {
    cut: (request, onTheWay) =>
      new Promise((resolve) => {
        if (!worker) {
          worker = new Worker(new URL("./cut.worker.ts", import.meta.url), { type: "module" });
          worker.addEventListener("message", hear);
        }
        id += 1;
        resolves.push(resolve);
        tell = onTheWay;
        worker.postMessage({ ...request, id, onTheWay: onTheWay !== undefined } satisfies CutAsk);
      }),
  };
}

/** Puts the pictures back that were sent before. Every answer passes here once, in its order. */
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
