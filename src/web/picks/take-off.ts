/** What comes off, in which order, until a picked piece is off. */
import type { Design } from "../../design.ts";
import { screwById } from "../../project/lookup.ts";
import { careOf } from "../../setout/removal/care.ts";
import { type RemovalStep, removalOf } from "../../setout/removal/reach.ts";
import { type Message, message } from "../../text/message.ts";
import type { Pick } from "./pick.ts";

export interface TakeOffStep {
  readonly mark: string;
  readonly pick: Pick;
  readonly kind: Message;
  /** Screws to draw and mass. */
  readonly work: Message;
}

export interface TakeOff {
  readonly sum: Message;
  /** The picked piece last. */
  readonly steps: readonly TakeOffStep[];
  readonly cautions: readonly Message[];
}

/** Undefined for a pick that is no piece. */
export function takeOffOf(design: Design, pick: Pick): TakeOff | undefined {
  const way = pick.kind === "piece" ? removalOf(design.facade, pick.id) : undefined;
  if (!way) return undefined;
  const { demands, facade } = design;
  const care = careOf(facade, way, demands);
  return {
    sum: message("page.take-off.sum", { pieces: way.steps.length, screws: way.screws, mass: way.massKg }),
    steps: way.steps.map((step) => ({
      mark: step.mark,
      pick: { kind: "piece", face: pick.face, id: step.mark },
      kind: message("page.value.term", { kind: step.kind }),
      work: workOf(design, step),
    })),
    cautions: [
      ...(care.high ? [message("proof.caution.heights", { height: demands.fallHeightMm })] : []),
      ...(care.overhead ? [message("page.take-off.overhead")] : []),
      ...(care.heavy.length > 0
        ? [message("page.take-off.two-people", { marks: care.heavy, limit: demands.onePersonKg })]
        : []),
    ],
  };
}

function workOf({ project }: Design, { screws, massKg }: RemovalStep): Message {
  const drawn = screws.map(({ screw, count }) => {
    const driver = screwById(project, screw)?.driver;
    return driver === undefined
      ? message("page.take-off.screws", { count, screw })
      : message("page.take-off.screws-driver", { count, screw, driver });
  });
  const parts = drawn.length > 0 ? drawn : [message("page.take-off.no-screws")];
  return message("page.value.list", { items: [...parts, message("page.take-off.mass", { mass: massKg })] });
}
