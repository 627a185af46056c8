/** Zones of a generated face: one cladding, or two or three side by side; pins, moved lines and forbidden bands of sheets. */
import fc from "fast-check";
import type { ProjectDocument } from "../../../src/project/schema/project.ts";
import { BUILD_UP, CLADDING } from "./makes.ts";
import { millimetres, share } from "./numbers.ts";

type ZoneDocument = ProjectDocument["faces"][number]["zones"][number];
export type Make = keyof typeof CLADDING;

interface JointsSeed {
  readonly pinsX: readonly number[];
  readonly pinsY: readonly number[];
  readonly bandX: readonly [number, number] | null;
  readonly bandY: readonly [number, number] | null;
}

export interface ZonesSeed {
  readonly makes: readonly Make[];
  readonly splits: readonly number[];
  readonly junction: number;
  readonly pattern: "stacked" | "grid" | "offset" | null;
  readonly joints: JointsSeed | null;
}

const make = fc.constantFrom<Make>("boards", "sheets", "upright");

const joints: fc.Arbitrary<JointsSeed> = fc.record({
  pinsX: fc.array(share(0, 100), { maxLength: 2 }),
  pinsY: fc.array(millimetres(0, 3000), { maxLength: 2 }),
  bandX: fc.option(fc.tuple(share(0, 80), millimetres(20, 800))),
  bandY: fc.option(fc.tuple(millimetres(0, 2500), millimetres(20, 800))),
});

export const zonesSeed: fc.Arbitrary<ZonesSeed> = fc.record({
  makes: fc.oneof(
    { arbitrary: make.map((one) => [one]), weight: 3 },
    { arbitrary: fc.array(make, { minLength: 2, maxLength: 3 }), weight: 1 },
  ),
  splits: fc.tuple(share(25, 45), share(55, 75)),
  junction: millimetres(0, 12),
  pattern: fc.option(fc.constantFrom("stacked", "grid", "offset")),
  joints: fc.option(joints),
});

export function zonesOf(
  { makes, splits, junction, pattern, joints }: ZonesSeed,
  length: number,
): ZoneDocument[] {
  return makes.map((make, i): ZoneDocument => {
    const cut = (k: number): number => Math.round(length * (splits[makes.length === 2 ? 1 : k] ?? 0));
    return {
      id: `z${i + 1}`,
      cladding: CLADDING[make],
      buildUp: BUILD_UP[make],
      x: [i === 0 ? "left end" : cut(i - 1) + junction, i === makes.length - 1 ? "right end" : cut(i)],
      ...(make === "sheets" && pattern && { pattern }),
      ...(make === "sheets" && joints && { joints: jointsOf(joints, length) }),
    };
  });
}

function jointsOf({ pinsX, pinsY, bandX, bandY }: JointsSeed, length: number): ZoneDocument["joints"] {
  const x = [...new Set(pinsX.map((one) => Math.round(one * length)))];
  const from = bandX ? Math.round(bandX[0] * length) : 0;
  return {
    pinned: { x, y: [...new Set(pinsY)] },
    forbidden: {
      x: bandX ? [[from, from + bandX[1]]] : [],
      y: bandY ? [[bandY[0], bandY[0] + bandY[1]]] : [],
    },
  };
}
