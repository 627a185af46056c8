/** How long the membrane of each face stands bare, against what its data sheet allows. */
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import type { SiteState } from "../journal/fold.ts";
import { isSkin } from "./counts.ts";
import { dateOf, dayOf } from "./days.ts";

export interface BareMembrane {
  readonly face: string;
  readonly outcome: "pass" | "fail" | "cannot evaluate";
  /** From its signing (H1), or the first of its strips told as fixed, whichever came first; absent where neither was told. */
  readonly weeks?: number;
  readonly limitWeeks?: number;
  /** The last day that the data sheet allows: `2026-05-04`. */
  readonly coverBy?: string;
  readonly says: Message;
}

/**
 * Faces whose cladding is all fixed are covered and left out.
 * @param now ISO 8601, UTC; times are those of the phones
 */
export function bareMembranes(
  { facade, project }: { readonly facade: Pick<Facade, "faces">; readonly project: Project },
  { pieces: told, holdPoints }: Pick<SiteState, "pieces" | "holdPoints">,
  now: string,
): BareMembrane[] {
  const limitWeeks = project.limits.membrane?.maxWeeksUncovered?.value;
  return facade.faces.flatMap(({ id: face, pieces }): BareMembrane[] => {
    const skin = pieces.filter(isSkin);
    if (skin.length > 0 && skin.every(({ mark }) => told.stage(mark) === "fixed")) return [];
    const signed = holdPoints.filter(({ place, body }) => place.face === face && body.point === "H1");
    const strips = pieces
      .filter(({ kind }) => kind === "membrane")
      .flatMap(({ mark }) => told.of(mark)?.ticks.fixed ?? []);
    const since = [...signed, ...strips]
      .map(({ told: time }) => dayOf(time))
      .reduce((least, day) => Math.min(least, day), Infinity);
    if (since === Infinity) {
      return [{ face, outcome: "cannot evaluate", says: message("survey.bare.unknown", { face }) }];
    }
    const weeks = (dayOf(now) - since) / 7;
    if (limitWeeks === undefined) {
      const says = message("survey.bare.no-limit", { face, weeks });
      return [{ face, outcome: "cannot evaluate", weeks, says }];
    }
    const coverBy = dateOf(since + limitWeeks * 7);
    const values = { face, weeks, limit: limitWeeks, by: coverBy };
    const within = weeks <= limitWeeks;
    return [
      {
        face,
        outcome: within ? "pass" : "fail",
        weeks,
        limitWeeks,
        coverBy,
        says: message(within ? "survey.bare.within" : "survey.bare.over", values),
      },
    ];
  });
}
