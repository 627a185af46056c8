/** Schedules: cladding and closures piece by piece, battens and backing with their screws and packers. */
import { isCladding } from "../cutting/facade/pieces.ts";
import type { CutPlan } from "../cutting/facade/plan.ts";
import type { Project } from "../project/schema/project.ts";
import type { Facade, Piece, PieceKind } from "../setout/facade.ts";
import type { BattenLine, PieceLine } from "./model.ts";

const IN_PIECES: ReadonlySet<PieceKind> = new Set([
  "sheet",
  "board",
  "closure",
  "flashing",
  "membrane",
  "sleeve",
  "return",
]);
const IN_BATTENS: ReadonlySet<PieceKind> = new Set(["batten", "counter-batten", "rail", "post", "backing"]);

export function pieceSchedule(project: Project, facade: Facade, plan: CutPlan | undefined): PieceLine[] {
  const lots = lotsByMark(plan);
  const finishes = new Map(
    project.claddings.map((one) => [one.id, one.kind === "boards" ? one.finish : undefined]),
  );
  return facade.faces.flatMap((face) => {
    const cladding = new Map(face.zones.map((zone) => [zone.id, zone.cladding]));
    return face.pieces
      .filter(({ kind }) => IN_PIECES.has(kind))
      .map((piece): PieceLine => {
        const lot = lots.get(piece.mark) ?? piece.lot;
        const finish = isCladding(piece)
          ? finishes.get(piece.cladding ?? cladding.get(piece.zone ?? "") ?? "")
          : undefined;
        return {
          ...line(piece),
          ...(piece.course === undefined ? {} : { course: piece.course }),
          ...(lot === undefined ? {} : { lot }),
          ...(finish === undefined ? {} : { finish }),
        };
      });
  });
}

function line({
  mark,
  kind,
  face,
  zone,
  cut,
  material,
  massKg,
}: Piece): Omit<PieceLine, "course" | "lot" | "finish"> {
  return { mark, kind, face, ...(zone === undefined ? {} : { zone }), ...cut, material, massKg };
}

/** The lot that the cut plan takes each board from. */
function lotsByMark(plan: CutPlan | undefined): ReadonlyMap<string, string> {
  const result = plan?.rips?.result;
  if (result === undefined) return new Map();
  const lots = new Map(result.strips.map(({ id, lot }) => [id, lot]));
  return new Map(
    result.lengths.plan.bars.flatMap(({ stockId, pieces }) => {
      const lot = lots.get(stockId);
      return lot === undefined ? [] : pieces.map(({ demandId }): [string, string] => [demandId, lot]);
    }),
  );
}

export function battenSchedule(project: Project, facade: Facade, plan: CutPlan | undefined): BattenLine[] {
  const widths = new Map(project.stock.battens.map(({ id, width }) => [id, width]));
  const backing = new Map(
    (plan?.lengths ?? [])
      .filter(({ use }) => use === "backing")
      .flatMap(({ stock, request }) =>
        stock === undefined ? [] : request.demands.map(({ id }): [string, string] => [id, stock]),
      ),
  );
  return facade.faces.flatMap(({ pieces }) => {
    const packers = packersByBatten(pieces);
    return pieces
      .filter(({ kind }) => IN_BATTENS.has(kind))
      .map((piece): BattenLine => {
        const stock = piece.stock ?? backing.get(piece.mark);
        return {
          ...line(piece),
          ...(stock === undefined ? {} : { stock }),
          ripped: piece.cut.width < (widths.get(stock ?? "") ?? 0),
          screws: counted(piece.fixings.map(({ screw }) => screw)).map(([screw, count]) => ({
            screw,
            count,
          })),
          packers: counted(packers.get(piece.mark) ?? []).map(([thickness, count]) => ({
            thickness,
            count,
          })),
        };
      });
  });
}

/** Thicknesses of the packers behind each batten, one a packer. */
function packersByBatten(pieces: readonly Piece[]): ReadonlyMap<string, number[]> {
  const behind = new Map<string, number[]>();
  for (const { kind, supports, cut } of pieces) {
    if (kind !== "packer") continue;
    for (const batten of supports) {
      const list = behind.get(batten);
      if (list) list.push(cut.thickness);
      else behind.set(batten, [cut.thickness]);
    }
  }
  return behind;
}

/** How often each thing comes, in the order of its first coming. */
export function counted<Thing>(things: readonly Thing[]): [thing: Thing, count: number][] {
  const counts = new Map<Thing, number>();
  for (const thing of things) counts.set(thing, (counts.get(thing) ?? 0) + 1);
  return [...counts];
}
