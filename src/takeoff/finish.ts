/**
 * Finish of boards: all four sides and both ends (common practice: finish before fixing, seal every cut), by the coats
 * that the project names and the catalogue's coverage.
 */
import { coverage } from "../catalogue/finishes.ts";
import { catalogueWith } from "../catalogue/own-figures.ts";
import { isCladding } from "../cutting/facade/pieces.ts";
import type { BoardCladding, Project } from "../project/schema/project.ts";
import type { Facade, Piece } from "../setout/facade.ts";
import type { FinishLine } from "./model.ts";

const MM2_PER_M2 = 1e6;

/** The catalogue's coverage is that of oils and stains that soak in; tar, paint and char are not of their kind. */
const SOAKS_IN = /\b(?:oil|stain|huil|lasur|saturateur)/i;

const DAYS_A_COAT = 1;

const NUMBERS: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  une: 1,
  deux: 2,
  trois: 3,
  quatre: 4,
};
/** A number, at most two words, then coats: "three oil coats", "deux fines couches". */
const COATS = new RegExp(
  `\\b([1-9]|${Object.keys(NUMBERS).join("|")})(?:\\s+\\p{L}+){0,2}?\\s+(?:coats?|couches?)\\b`,
  "iu",
);

/** Coats that a finish's wording names, or undefined. */
export function coatsIn(finish: string): number | undefined {
  const word = COATS.exec(finish)?.[1]?.toLowerCase();
  return word === undefined ? undefined : (NUMBERS[word] ?? Number(word));
}

export function finishLines(project: Project, facade: Facade): FinishLine[] {
  return project.claddings.flatMap((cladding): FinishLine[] => {
    if (cladding.kind !== "boards" || cladding.finish === undefined) return [];
    const areaM2 = boardSurface(facade, cladding.id);
    return areaM2 > 0
      ? [finishLine(cladding, { finish: cladding.finish, areaM2, figures: project.figures })]
      : [];
  });
}

/** All six sides of every board of a cladding (m²). */
function boardSurface(facade: Facade, cladding: string): number {
  const sides = facade.faces.flatMap(({ zones, pieces }) => {
    const ids = new Set(zones.filter((zone) => zone.cladding === cladding).map(({ id }) => id));
    return pieces
      .filter((piece) => isCladding(piece) && (piece.cladding === cladding || isOfZone(piece, ids)))
      .map(
        ({ cut: { length, width, thickness } }) =>
          2 * (length * width + length * thickness + width * thickness),
      );
  });
  return sides.reduce((sum, area) => sum + area, 0) / MM2_PER_M2;
}

function isOfZone({ cladding, zone }: Piece, ids: ReadonlySet<string>): boolean {
  return cladding === undefined && ids.has(zone ?? "");
}

function finishLine(
  cladding: BoardCladding,
  { finish, areaM2, figures }: { finish: string; areaM2: number; figures: Project["figures"] },
): FinishLine {
  const coats = coatsIn(finish);
  const reach = SOAKS_IN.test(finish) ? reachOf(cladding, figures) : undefined;
  return {
    cladding: cladding.id,
    finish,
    areaM2,
    ...(coats === undefined ? {} : { coats, dryingDays: coats * DAYS_A_COAT }),
    ...(reach === undefined ? {} : { coverage: reach }),
    ...(coats === undefined || reach === undefined
      ? {}
      : { litres: { least: (areaM2 * coats) / reach.most, most: (areaM2 * coats) / reach.least } }),
  };
}

/** Boards of a pile are sawn or weathered; whether bought ones are planed is not in the file, so both count for them. */
function reachOf({ lots }: BoardCladding, figures: Project["figures"]): FinishLine["coverage"] {
  const catalogue = catalogueWith(figures);
  const rough = coverage("sawn-or-weathered", catalogue)?.perCoat;
  const smooth = coverage("smooth", catalogue)?.perCoat;
  const most = lots ? rough : smooth;
  if (rough?.value.min === undefined || most?.value.max === undefined) return undefined;
  return { least: rough.value.min, most: most.value.max, source: rough.source };
}
