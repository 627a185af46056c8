/** The order of the work as it is given out: by crew, and for each by lifts of the scaffold from below. */
import type { Crews } from "../../project/schema/crews.ts";
import type { WorkStep } from "./order-of-work.ts";

export interface LiftWork {
  /** From 1 at the ground; absent for what is done over the whole height. */
  readonly lift?: number;
  /** In the order of the faces and of the work on each. */
  readonly steps: readonly WorkStep[];
}

export interface CrewWork {
  /** Absent for what no crew is given. */
  readonly crew?: string;
  readonly lifts: readonly LiftWork[];
}

/** Every step once: crews as the file has them, then what no crew is given; crews without work are left out. */
export function workByCrew(steps: readonly WorkStep[], crews: Crews = []): CrewWork[] {
  const given = steps.map((step) => ({ step, crew: crewOf(step, crews) }));
  return [...new Set(crews.map(({ name }) => name)), undefined].flatMap((crew): CrewWork[] => {
    const own = given.filter((one) => one.crew === crew).map(({ step }) => step);
    if (own.length === 0) return [];
    return [{ ...(crew === undefined ? {} : { crew }), lifts: byLift(own) }];
  });
}

function crewOf({ face, step, lift }: WorkStep, crews: Crews): string | undefined {
  return crews.find(({ work }) =>
    work.some(
      (one) =>
        one.face === face &&
        (one.steps?.includes(step) ?? true) &&
        (one.lifts === undefined || (lift !== undefined && one.lifts.includes(lift))),
    ),
  )?.name;
}

/** Before the first lift. */
const WHOLE_HEIGHT = 0;

function liftOf({ lift = WHOLE_HEIGHT }: WorkStep): number {
  return lift;
}

/** What is done over the whole height stands in front: no lift is clad before it. */
function byLift(steps: readonly WorkStep[]): LiftWork[] {
  const lifts = [...new Set(steps.map(liftOf))].sort((a, b) => a - b);
  return lifts.map((lift) => ({
    ...(lift === WHOLE_HEIGHT ? {} : { lift }),
    steps: steps.filter((step) => liftOf(step) === lift),
  }));
}
