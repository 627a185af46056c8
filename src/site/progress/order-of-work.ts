/** The order of the work on each face: what is done, what can be done now, and what waits for which hold point. */
import type { Facade } from "../../setout/facade.ts";
import { type MethodStep, methodSteps } from "../../takeoff/method.ts";
import { type HoldPoint, holdAfter } from "../hold-points.ts";
import type { SiteState } from "../journal/fold.ts";

export interface WorkStep extends MethodStep {
  /** Marks that are not told as fixed. */
  readonly left: readonly string[];
  /** Must be signed before the next step covers it. */
  readonly hold?: HoldPoint;
  /**
   * `done`: all fixed and, where it ends with a hold point, signed. `sign`: all fixed, and the hold point is not signed. `can`: may be
   * done now. `waits`: something before it is not done.
   */
  readonly status: "done" | "sign" | "can" | "waits";
  /** The hold point that keeps a waiting step closed; absent where it waits for work alone. */
  readonly waitsFor?: HoldPoint;
}

/**
 * Steps of every face in their order. A signed hold point says that its step is done, whatever was ticked: who signs has seen it. What
 * comes after an unsigned one waits, although pieces of it may be fixed: that is shown by `left`.
 * @param liftMm height of one lift of the scaffold; the usual one where absent
 */
export function orderOfWork(
  facade: Pick<Facade, "faces">,
  state: Pick<SiteState, "pieces" | "holdPoints">,
  liftMm?: number,
): WorkStep[] {
  const signed = new Set(state.holdPoints.map(({ place, body }) => `${place.face} ${body.point}`));
  const steps = methodSteps(facade, liftMm);
  return facade.faces.flatMap(({ id }) => {
    let isOpen = true;
    let closedBy: HoldPoint | undefined;
    return steps
      .filter(({ face }) => face === id)
      .map((step): WorkStep => {
        const left = step.marks.filter((mark) => state.pieces.stage(mark) !== "fixed");
        const hold = holdAfter(step);
        const isDone = hold === undefined ? left.length === 0 : signed.has(`${id} ${hold}`);
        const status = isDone ? "done" : !isOpen ? "waits" : left.length === 0 ? "sign" : "can";
        const waitsFor = status === "waits" ? closedBy : undefined;
        if (!isDone) {
          isOpen = false;
          closedBy ??= hold;
        }
        return {
          ...step,
          left,
          status,
          ...(hold === undefined ? {} : { hold }),
          ...(waitsFor === undefined ? {} : { waitsFor }),
        };
      });
  });
}
