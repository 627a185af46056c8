/**
 * What is painted over the faces, worked out on the page while it is shown: how far wind uses things, the light behind the cladding, the wall
 * as read, how far the work is.
 */
import { useMemo } from "react";
import type { Design } from "../../design.ts";
import { type FaceLight, faceLights } from "../../proof/light/face-lights.ts";
import { useRested } from "../sheet/use-rested.ts";
import { useStill } from "../sheet/use-still.ts";
import { type SurveyedOptions, useSurveyedWalls } from "../survey/use-surveyed-walls.ts";
import { useWindUses } from "../wind/use-wind-uses.ts";
import type { ElevationOptions } from "./elevation.ts";
import type { Shown } from "./layers.ts";

export interface PaintedOver {
  /** The design whose wind is shown. */
  readonly windy: Design | undefined;
  /** The same while nothing of it changes; nothing of a layer that is not shown, nor light where the project does not tell its ground. */
  readonly painted: Required<Pick<ElevationOptions, "uses" | "lights" | "walls" | "told">>;
  /** What is said where there is nothing to paint: a key. */
  readonly says: string | undefined;
}

const NONE: readonly FaceLight[] = [];
/** Between two pictures of wind during a drag, milliseconds. */
const WIND_APART = 120;
/** A year of light takes its time: the hand comes first. */
const STILL = { rest: 250, atMost: 2000 };

export function usePaintedOver(
  design: Design | undefined,
  { shown, told, plane, load }: SurveyedOptions & { readonly shown: Shown },
): PaintedOver {
  const windy = useRested(shown.has("wind") ? design : undefined, WIND_APART);
  const uses = useWindUses(windy, shown.has("wind"))?.uses;
  const still = useStill(shown.has("light") ? design : undefined, shown.has("light"), STILL);
  const facade = still?.facade;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a design that has been proven since has the same facade
  const lights = useMemo(() => (still ? faceLights(still) : NONE), [facade]);
  const walls = useSurveyedWalls(shown.has("survey") ? design : undefined, { told, plane, load });
  const pieces = shown.has("progress") ? told?.pieces : undefined;
  const painted = useMemo(
    () => ({ uses: uses ?? [], lights, walls: walls ?? [], told: pieces }),
    [uses, lights, walls, pieces],
  );
  return { windy, painted, says: walls?.length === 0 ? "page.layer.survey-none" : undefined };
}
