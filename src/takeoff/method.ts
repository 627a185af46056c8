/**
 * The order of work: face by face from the wall outward, the cladding by lifts of the scaffold from below. Each step with what
 * is carried up for it. The order of trades is common practice; no piece comes before what carries it.
 */
import { polygonBounds } from "../geometry/polygon.ts";
import type { WorkStepName } from "../project/schema/crews.ts";
import type { Facade, FaceLayout, Piece, PieceKind } from "../setout/facade.ts";

export interface MethodStep {
  readonly face: string;
  readonly step: WorkStepName;
  /** Of the scaffold, from 1 at the ground; of cladding alone. */
  readonly lift?: number;
  /** What comes on one load: behind the cladding, or the cladding of one face. */
  readonly lot: string;
  readonly marks: readonly string[];
  readonly massKg: number;
  readonly heaviest: { readonly mark: string; readonly massKg: number };
}

/** Common practice: what is reached from one deck. */
export const USUAL_LIFT_MM = 2000;

const STEPS: readonly { readonly step: WorkStepName; readonly kinds: readonly PieceKind[] }[] = [
  { step: "membrane", kinds: ["membrane", "sleeve"] },
  { step: "flashings", kinds: ["flashing"] },
  { step: "timber", kinds: ["backing", "packer", "counter-batten", "batten", "rail", "gasket"] },
  { step: "closures", kinds: ["closure"] },
  { step: "cladding", kinds: ["sheet", "board", "post"] },
  { step: "trims", kinds: ["return"] },
];

export function methodSteps({ faces }: Pick<Facade, "faces">, liftMm = USUAL_LIFT_MM): MethodStep[] {
  return faces.flatMap((face) =>
    STEPS.flatMap(({ step, kinds }): MethodStep[] => {
      const pieces = face.pieces.filter(({ kind }) => kinds.includes(kind));
      if (step !== "cladding") return stepOf(face, { step, pieces });
      const lifts = [...new Set(pieces.map((piece) => liftOf(face, piece, liftMm)))].sort((a, b) => a - b);
      return lifts.flatMap((lift) =>
        stepOf(face, { step, lift, pieces: pieces.filter((piece) => liftOf(face, piece, liftMm) === lift) }),
      );
    }),
  );
}

function stepOf(
  face: FaceLayout,
  { step, lift, pieces }: { step: WorkStepName; lift?: number; pieces: readonly Piece[] },
): MethodStep[] {
  const [first] = pieces;
  if (!first) return [];
  const { mark, massKg } = pieces.reduce((a, b) => (b.massKg > a.massKg ? b : a), first);
  return [
    {
      face: face.id,
      step,
      ...(lift !== undefined && { lift }),
      lot: `${face.code}-${step === "cladding" || step === "trims" ? "2" : "1"}`,
      marks: pieces.map((piece) => piece.mark),
      massKg: pieces.reduce((sum, piece) => sum + piece.massKg, 0),
      heaviest: { mark, massKg },
    },
  ];
}

/** The lift from whose deck a piece's lower edge is reached; soffits are worked from one. */
function liftOf({ frame, ground, outline }: FaceLayout, piece: Piece, liftMm: number): number {
  if (frame.level !== undefined) return 1;
  const { x, y } = polygonBounds(piece.outline);
  const under = ground
    .filter(([at]) => at >= x[0] - liftMm && at <= x[1] + liftMm)
    .map(([, height]) => height);
  const low = under.length > 0 ? Math.min(...under) : polygonBounds(outline).y[0];
  return Math.max(1, Math.floor((y[0] - low) / liftMm) + 1);
}
