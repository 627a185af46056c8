/** Returns of the openings that ask for them, with the sill that reaches out to them, and what carries each. */
import type { Demands } from "../../codes/demands.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Opening } from "../../project/schema/project.ts";
import type { Wall } from "../behind/wall.ts";
import type { Piece, Solid } from "../facade.ts";
import { type Asked, askedOf } from "./asked.ts";
import { carriersOf, type Side } from "./carriers.ts";
import { bite, isShallow, laidOut, notAsked, trimsLaid, unheld, widthFault } from "./findings.ts";
import { sidePieces } from "./lay.ts";
import { revealSill } from "./sill.ts";
import { type Trim, trimsOf } from "./trims.ts";

const SIDES: readonly Side[] = ["left", "right", "head"];

interface Stands {
  readonly demands: Demands;
  readonly solids: readonly Solid[];
  /** What lies behind the cladding, the bucks of openings among it. */
  readonly behind: readonly Piece[];
}

interface Made {
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
}

/** The pieces laid out so far, those that carry returns or trims told of them, and these. */
export function withReturns(wall: Wall, stands: Stands): Made {
  const before = [...wall.laid, ...stands.behind];
  const made = wall.face.openings.flatMap((opening, i) =>
    opening.reveal ? [ofOpening(wall, stands, { opening, path: `${wall.path}/openings/${i}` })] : [],
  );
  if (made.length === 0) return { pieces: before, findings: [] };
  const returns = made.flatMap(({ pieces }) => pieces);
  return {
    pieces: [...takenOffAfter(before, returns), ...returns],
    findings: made.flatMap(({ findings }) => findings),
  };
}

function ofOpening(
  wall: Wall,
  { demands, solids, behind }: Stands,
  { opening, path }: { readonly opening: Opening; readonly path: string },
): Made {
  const at = { face: wall.face.id, opening: opening.id, path };
  if (opening.kind === "recess") return { pieces: [], findings: [notAsked(at, "recess")] };
  const asked = askedOf(wall, opening, path);
  if (!asked) return { pieces: [], findings: [notAsked(at, "no-frame")] };
  const { left, right } = wall.ends;
  if (opening.x[0] < left.openTo || opening.x[1] > right.openTo)
    return { pieces: [], findings: [notAsked(at, "corner")] };
  const trims = isShallow(asked) ? trimsOf(wall, asked) : undefined;
  if (trims) return trimmed(wall, asked, trims);
  const fault = widthFault(asked);
  if (fault) return { pieces: [], findings: [fault] };
  const { cladding } = asked;
  const carriers = (side: Side) => carriersOf(side, opening, { solids, bucks: behind });
  const stand = {
    project: wall.project,
    movementMmPerM:
      demands.sheets[cladding.id]?.movementMmPerM ??
      (cladding.kind === "sheets" ? cladding.dataSheet.moistureMmPerM : 0),
    asked,
    carriers: { left: carriers("left"), right: carriers("right"), head: carriers("head") },
  };
  const sides = SIDES.map((side) => ({ side, pieces: sidePieces(stand, side) }));
  const pieces = sides.flatMap((one) => one.pieces ?? []);
  const loose = sides.flatMap((one) => (one.pieces ? [] : [one.side]));
  // Returns on some sides alone are no lining: all stand, or none.
  if (loose.length > 0) return { pieces: [], findings: [unheld(asked, loose)] };
  const short = bite(wall.project, asked, pieces);
  return {
    pieces: [...pieces, ...sillOf(wall, asked, pieces)],
    findings: [laidOut(asked, pieces), ...(short ? [short] : [])],
  };
}

function trimmed(wall: Wall, asked: Asked, trims: readonly Trim[]): Made {
  const pieces = trims.map(({ piece }) => piece);
  return { pieces: [...pieces, ...sillOf(wall, asked, pieces)], findings: [trimsLaid(asked, trims)] };
}

/** The jamb returns stand over its upstand, and come off before it. */
function sillOf({ face }: Wall, asked: Asked, returns: readonly Piece[]): Piece[] {
  const jambs = returns.filter(({ why }) => why.line?.includes(" jamb ")).map(({ mark }) => mark);
  const sill = revealSill(face, asked, jambs);
  return sill ? [sill] : [];
}

function takenOffAfter(stand: readonly Piece[], returns: readonly Piece[]): Piece[] {
  const over = new Map<string, string[]>();
  for (const { mark, supports } of returns) {
    for (const carrier of supports) over.set(carrier, [...(over.get(carrier) ?? []), mark]);
  }
  return stand.map((piece) => {
    const before = over.get(piece.mark);
    return before ? { ...piece, removeBefore: [...piece.removeBefore, ...before] } : piece;
  });
}
