/** P030: water that gets behind the cladding runs down the membrane and out; nothing may lie across its way. */
import { type Finding, finding } from "../findings/finding.ts";
import { intervalLength } from "../geometry/interval.ts";
import { polygonBounds } from "../geometry/polygon.ts";
import type { Piece, ZonePlane } from "../setout/facade.ts";
import { message } from "../text/message.ts";
import type { FaceContext, ZoneView } from "./context.ts";
import { compared, greatest, holds, input, written } from "./working.ts";

/** A level piece on the membrane that is wider than this dams what runs down; a packer or an end block does not (common practice). */
const WIDEST_MM = 150;
const CAVITY = {
  kind: "document",
  document: "National Building Code of Canada, Division B",
  clause: "9.27.2.2.(1)",
} as const;

const IN_THE_CAVITY: readonly Piece["kind"][] = ["batten", "counter-batten", "rail", "backing", "packer"];

export function drainagePath({ zones }: FaceContext): Finding[] {
  return zones.flatMap((view) => {
    if (!view.plane || view.battens.length === 0) return [];
    const crossing = greatest(levelOnMembrane(view, view.plane), ({ width }) => width);
    return [crossing ? judged(view, crossing) : upright(view)];
  });
}

interface Crossing {
  readonly mark: string;
  readonly width: number;
}

/** Timber of the cavity with no way for water between it and the membrane; an upright piece sheds water at its sides. */
function levelOnMembrane({ where, face }: ZoneView, { backZ, cavity }: ZonePlane): Crossing[] {
  const membrane = backZ - cavity;
  return face.pieces.flatMap(({ kind, zone, mark, z, outline }) => {
    if (zone !== where.zone || z[0] > membrane || z[1] <= membrane || !IN_THE_CAVITY.includes(kind))
      return [];
    const { x, y } = polygonBounds(outline);
    const width = intervalLength(x);
    return intervalLength(y) > width ? [] : [{ mark, width }];
  });
}

function upright(view: ZoneView): Finding {
  return finding({
    code: "P030",
    outcome: "pass",
    where: view.where,
    says: message("proof.drain.upright"),
    source: CAVITY,
  });
}

function judged(view: ZoneView, { mark, width }: Crossing): Finding {
  const open = holds("at most", { demand: width, limit: WIDEST_MM });
  return finding({
    code: "P030",
    outcome: open ? "pass" : "fail",
    where: { marks: [mark], ...view.where },
    says: message(open ? "proof.drain.open" : "proof.drain.dammed", { mark, width }),
    ...(open ? {} : { hint: message("proof.drain.break") }),
    ...compared("at most", { demand: width, limit: WIDEST_MM, unit: "mm" }),
    working: {
      formula: "b ≤ b_max",
      inputs: [
        input("b", { meaning: "across-water", value: width, unit: "mm", basis: "derived" }),
        input("b_max", { meaning: "widest-across-water", value: WIDEST_MM, unit: "mm", basis: "typical" }),
      ],
      substituted: `${written(width)} ${open ? "≤" : ">"} ${WIDEST_MM}`,
    },
    source: CAVITY,
  });
}
