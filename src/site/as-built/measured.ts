/** What was measured of openings and ends, from the file and the journal, over what the file has of them. */
import type { Opening, Project } from "../../project/schema/project.ts";
import { faceLength } from "../../setout/corners.ts";
import { snap } from "../../units/length.ts";
import type { SiteState } from "../journal/fold.ts";

export const SIDES = ["left", "right", "sill", "head"] as const;
export type Side = (typeof SIDES)[number];

/** One side of an opening, in the face frame (mm). */
export interface MeasuredSide {
  readonly side: Side;
  /** As the file has it. */
  readonly drawn: number;
  /** Undefined where its own place was not measured. */
  readonly measured?: number;
}

export interface MeasuredOpening {
  readonly face: string;
  readonly opening: string;
  readonly sides: readonly MeasuredSide[];
  /** How far its head stands to the right of its sill, from its diagonals (mm); undefined where a size or a diagonal is missing. */
  readonly lean?: number;
  /** Any diagonal was measured. */
  readonly hasDiagonals: boolean;
}

export interface MeasuredEnd {
  readonly face: string;
  readonly end: "left" | "right";
  readonly drawn: number;
  readonly measured: number;
}

export interface Measured {
  readonly openings: readonly MeasuredOpening[];
  readonly ends: readonly MeasuredEnd[];
}

type Told = Pick<SiteState, "openings" | "ends">;

/** Openings and ends of which anything was measured, in the order of the file. The file's values stand before those told, and of several told their mean. */
export function measuredOf(project: Pick<Project, "faces" | "asBuilt">, told?: Told): Measured {
  const faces = project.faces.map((face) => ({
    face: face.id,
    openings: face.openings,
    length: faceLength(face),
  }));
  return {
    openings: faces.flatMap(({ face, openings }) =>
      openings.flatMap((opening) => measuredOpening(project, { face, opening }, told) ?? []),
    ),
    ends: faces.flatMap(({ face, length }) =>
      (["left", "right"] as const).flatMap((end): MeasuredEnd[] => {
        const own = project.asBuilt?.ends?.find((one) => one.face === face && one.end === end)?.at;
        const heard = (told?.ends ?? []).filter((one) => one.place.face === face && one.body.end === end);
        const measured = own ?? meanOf(heard.map(({ body }) => body.at));
        return measured === undefined
          ? []
          : [{ face, end, drawn: end === "left" ? 0 : snap(length), measured }];
      }),
    ),
  };
}

interface Sizes {
  readonly left?: number | undefined;
  readonly width?: number | undefined;
  readonly sill?: number | undefined;
  readonly height?: number | undefined;
  readonly diagonals?: readonly [number, number] | undefined;
}

function measuredOpening(
  { asBuilt }: Pick<Project, "asBuilt">,
  { face, opening }: { readonly face: string; readonly opening: Opening },
  told: Told | undefined,
): MeasuredOpening | undefined {
  const own: Sizes = asBuilt?.openings?.find((one) => one.face === face && one.opening === opening.id) ?? {};
  const heard = (told?.openings ?? [])
    .filter(({ place }) => place.face === face && place.opening === opening.id)
    .map(({ body }): Sizes => body);
  const of = (pick: (sizes: Sizes) => number | undefined): number | undefined =>
    pick(own) ?? meanOf(heard.flatMap((sizes) => pick(sizes) ?? []));
  const left = of((sizes) => sizes.left);
  const width = of((sizes) => sizes.width);
  const sill = of((sizes) => sizes.sill);
  const height = of((sizes) => sizes.height);
  const rising = of((sizes) => sizes.diagonals?.[0]);
  const falling = of((sizes) => sizes.diagonals?.[1]);
  if ([left, width, sill, height, rising, falling].every((value) => value === undefined)) return undefined;
  const sum = (from: number | undefined, size: number | undefined): number | undefined =>
    from === undefined || size === undefined ? undefined : snap(from + size);
  const side = (name: Side, drawn: number, measured: number | undefined): MeasuredSide => ({
    side: name,
    drawn,
    ...(measured !== undefined && { measured }),
  });
  const lean = leanOf({ width, rising, falling });
  return {
    face,
    opening: opening.id,
    sides: [
      side("left", opening.x[0], left),
      side("right", opening.x[1], sum(left, width)),
      side("sill", opening.y[0], sill),
      side("head", opening.y[1], sum(sill, height)),
    ],
    ...(lean !== undefined && { lean }),
    hasDiagonals: rising !== undefined || falling !== undefined,
  };
}

function meanOf(values: readonly number[]): number | undefined {
  return values.length === 0
    ? undefined
    : snap(values.reduce((sum, value) => sum + value, 0) / values.length);
}

/** Of a parallelogram: d₁² − d₂² = 4 · width · lean, by the law of cosines for its two diagonals. */
function leanOf({
  width,
  rising,
  falling,
}: Readonly<Record<"width" | "rising" | "falling", number | undefined>>) {
  if (width === undefined || rising === undefined || falling === undefined) return undefined;
  return (rising ** 2 - falling ** 2) / (4 * width);
}
