/** What is painted over the faces, worked out on the page while it is shown: how far wind uses things, and the light behind the cladding. */
import { useMemo } from "react";
import type { Design } from "../../design.ts";
import { zoneViews } from "../../proof/context.ts";
import { type ZoneLight, zoneLights } from "../../proof/light/zone-light.ts";
import type { FaceUse } from "../../proof/wind/uses.ts";
import { useRested } from "../sheet/use-rested.ts";
import { useStill } from "../sheet/use-still.ts";
import { useWindUses } from "../wind/use-wind-uses.ts";
import type { Shown } from "./layers.ts";

export interface PaintedOver {
  /** The design whose wind is shown. */
  readonly rested: Design | undefined;
  readonly wind: { readonly uses: readonly FaceUse[] } | undefined;
  /** None where the layer is not shown, nor where the project does not tell its ground. */
  readonly lights: readonly ZoneLight[];
}

const NONE: readonly ZoneLight[] = [];
/** Between two pictures of wind during a drag, milliseconds. */
const WIND_APART = 120;
/** A year of light takes its time: the hand comes first. */
const STILL = { rest: 250, atMost: 2000 };

export function usePaintedOver(design: Design | undefined, shown: Shown): PaintedOver {
  const rested = useRested(shown.has("wind") ? design : undefined, WIND_APART);
  const wind = useWindUses(rested, shown.has("wind"));
  const still = useStill(shown.has("light") ? design : undefined, shown.has("light"), STILL);
  const facade = still?.facade;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a design that has been proven since has the same facade
  const lights = useMemo(
    () => (still && zoneLights({ ...still, zones: zoneViews(still) })) ?? NONE,
    [facade],
  );
  return { rested, wind, lights };
}
