/** The unknowns of a face: of each piece that may move, its place and its edges, along each axis, in whole grid steps. */
import { toGridSteps } from "../../units/length.ts";
import type { Bound } from "./bounds.ts";
import type { FacePiece } from "./face-pieces.ts";

export type AxisName = "x" | "y";

/** A coordinate: an unknown, and what is added to it. The wall is unknown 0. */
export interface Handle {
  readonly unknown: number;
  readonly plus: number;
}

interface OnePiece {
  /** Of the piece's place; edges are unknowns of their own, tied to it while it is kept. */
  readonly place: Handle;
  readonly edges: ReadonlyMap<number, Handle>;
}

export class Unknowns {
  readonly drawn: number[] = [0];
  /** Of each piece that may move, its place first. */
  readonly together: number[][] = [];
  readonly bounds: Bound[] = [];
  private readonly of: readonly OnePiece[];
  readonly axis: AxisName;

  constructor(axis: AxisName, pieces: readonly FacePiece[]) {
    this.axis = axis;
    this.of = pieces.map((piece) => this.onePiece(piece));
  }

  private add(at: number): Handle {
    this.drawn.push(toGridSteps(at));
    return { unknown: this.drawn.length - 1, plus: 0 };
  }

  private onePiece({ isFree, edges, holes, locked }: FacePiece): OnePiece {
    const stations = [...edges, ...holes].filter(({ axis }) => axis === this.axis).map(({ at }) => at);
    const all = [...new Set([...stations, ...locked[this.axis]])].sort((a, b) => a - b);
    const [first = 0] = all;
    if (!isFree) {
      const edgesAt = all.map((at): [number, Handle] => [at, wallAt(at)]);
      return { place: wallAt(first), edges: new Map(edgesAt) };
    }
    const place = this.add(first);
    const handles = all.map((at): [number, Handle] => [at, this.add(at)]);
    this.together.push([place.unknown, ...handles.map(([, { unknown }]) => unknown)]);
    return { place, edges: new Map(handles) };
  }

  /** Of an edge of a piece, by where it was drawn (mm). */
  edge(piece: number, at: number): Handle {
    return this.of[piece]?.edges.get(at) ?? wallAt(at);
  }

  edgesOf(piece: number): ReadonlyMap<number, Handle> {
    return this.of[piece]?.edges ?? new Map();
  }

  place(piece: number): Handle {
    return this.of[piece]?.place ?? wallAt(0);
  }

  /** `least ≤ to − from ≤ most` (steps); what both stand on the wall is left to be. */
  between(
    from: Handle,
    to: Handle,
    { least, most }: { readonly least?: number; readonly most?: number },
    more: Pick<Bound, "gives" | "of"> & { readonly drawn?: number } = {},
  ): void {
    if (from.unknown === to.unknown) return;
    const { drawn, ...rest } = more;
    const shift = from.plus - to.plus;
    const even = drawn === undefined ? undefined : drawn + shift;
    if (most !== undefined) {
      this.bounds.push({
        from: from.unknown,
        to: to.unknown,
        most: most + shift,
        ...rest,
        ...(even !== undefined && { even }),
      });
    }
    if (least !== undefined) {
      this.bounds.push({
        from: to.unknown,
        to: from.unknown,
        most: -(least + shift),
        ...rest,
        ...(even !== undefined && { even: -even }),
      });
    }
  }
}

/** A place on the wall, which does not move (mm). */
export function wallAt(at: number): Handle {
  return { unknown: 0, plus: toGridSteps(at) };
}
