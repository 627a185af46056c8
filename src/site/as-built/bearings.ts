/** Battens that are fixed stay: screws of kept pieces hold in them, and new edges bear on them as the old ones did. */
import { type Interval, intervalLength } from "../../geometry/interval.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { SCREW_FROM_BATTEN_EDGE_MM } from "../../setout/sheets/screw-line.ts";
import { toGridSteps } from "../../units/length.ts";
import type { SiteState } from "../journal/fold.ts";
import type { FacePiece } from "./face-pieces.ts";
import { type Unknowns, wallAt } from "./unknowns.ts";

/** An edge bears where its nearest screw holds, which stands no further from it (mm). */
const NEAR_EDGE_MM = 100;

interface Borne {
  readonly face: FaceLayout;
  readonly told?: Pick<SiteState, "pieces">;
  readonly pieces: readonly FacePiece[];
  readonly unknowns: readonly [Unknowns, Unknowns];
  readonly asked: { readonly marks: readonly string[] }[];
}

export function bearings({ face, told, pieces, unknowns, asked }: Borne): void {
  const bearers = fixedBearers(face, told);
  pieces.forEach(({ piece, isFree, edges }, index) => {
    if (!isFree) return;
    const of = asked.push({ marks: [piece.mark] }) - 1;
    for (const [which, axis] of (["x", "y"] as const).entries()) {
      const own = unknowns[which] as Unknowns;
      const place = own.place(index);
      const drawn = own.drawn[place.unknown] as number;
      const screws = piece.fixings.flatMap((screw) => {
        const bearer = bearers.get(screw.into);
        return bearer?.across === axis ? [{ at: screw[axis], strip: strip(bearer.strip, screw[axis]) }] : [];
      });
      for (const {
        at,
        strip: [low, high],
      } of screws) {
        const off = toGridSteps(at) - drawn;
        own.between(
          wallAt(0),
          place,
          { least: toGridSteps(low) - off, most: toGridSteps(high) - off },
          { of, gives: { piece: index, level: 1 } },
        );
      }
      for (const edge of edges) {
        if (edge.axis !== axis) continue;
        const near = [...screws].sort((a, b) => Math.abs(a.at - edge.at) - Math.abs(b.at - edge.at))[0];
        if (!near || Math.abs(near.at - edge.at) > NEAR_EDGE_MM) continue;
        const off = edge.at - near.at;
        const band = { least: toGridSteps(near.strip[0] + off), most: toGridSteps(near.strip[1] + off) };
        own.between(wallAt(0), own.edge(index, edge.at), band, { of });
      }
    }
  });
}

/** Where a screw may go on a batten: as far from its edges as usual, or as it is. */
function strip(batten: Interval, at: number): Interval {
  const inset = Math.min(SCREW_FROM_BATTEN_EDGE_MM, intervalLength(batten) / 2);
  return [Math.min(batten[0] + inset, at), Math.max(batten[1] - inset, at)];
}

interface Bearer {
  /** The axis across it. */
  readonly across: "x" | "y";
  readonly strip: Interval;
}

/** Battens and rails that were told as fixed, or that carry what was. */
function fixedBearers({ pieces }: FaceLayout, told: Borne["told"]): ReadonlyMap<string, Bearer> {
  const isFixed = (mark: string): boolean => told?.pieces.stage(mark) === "fixed";
  const carrying = new Set(pieces.filter(({ mark }) => isFixed(mark)).flatMap(({ supports }) => supports));
  return new Map(
    pieces
      .filter(
        ({ kind, mark }) => (kind === "batten" || kind === "rail") && (isFixed(mark) || carrying.has(mark)),
      )
      .map(({ mark, outline }) => {
        const { x, y } = polygonBounds(outline);
        const across = intervalLength(x) <= intervalLength(y) ? "x" : "y";
        return [mark, { across, strip: across === "x" ? x : y }] as const;
      }),
  );
}
