/** The pieces of a facade that are sawn, each with the cladding that it is of. */
import type { Cladding, Project } from "../../project/schema/project.ts";
import type { Facade, Piece, PieceKind } from "../../setout/facade.ts";

const SAWN: ReadonlySet<PieceKind> = new Set([
  "sheet",
  "board",
  "batten",
  "counter-batten",
  "rail",
  "post",
  "backing",
  "return",
]);

export interface SawnPiece {
  readonly piece: Piece;
  readonly cladding?: Cladding;
}

/** Sheets and boards, and the returns that are cut from them. */
export function isCladding({ kind }: Piece): boolean {
  return kind === "sheet" || kind === "board" || kind === "return";
}

/** In the facade's order. Packers, closures, strips and flashings are counted, not planned. */
export function sawnPieces(project: Project, facade: Facade): SawnPiece[] {
  const claddings = new Map(project.claddings.map((one) => [one.id, one]));
  return facade.faces.flatMap((face) => {
    const ofZone = new Map(face.zones.map((zone) => [zone.id, claddings.get(zone.cladding)]));
    return face.pieces
      .filter(({ kind }) => SAWN.has(kind))
      .map((piece) => {
        const cladding = piece.cladding ? claddings.get(piece.cladding) : ofZone.get(piece.zone ?? "");
        return cladding === undefined ? { piece } : { piece, cladding };
      });
  });
}

/** Pieces gathered by a key, groups in the order in which they first come. */
export function gathered<Thing>(
  things: readonly Thing[],
  key: (thing: Thing) => string,
): Map<string, Thing[]> {
  const groups = new Map<string, Thing[]>();
  for (const thing of things) {
    const group = groups.get(key(thing));
    if (group) group.push(thing);
    else groups.set(key(thing), [thing]);
  }
  return groups;
}
