/** Battens and backing asked of the lengths in stock, one request a section. */
import type { Project } from "../../project/schema/project.ts";
import type { Piece, PieceKind } from "../../setout/facade.ts";
import { sameLength } from "../../units/length.ts";
import type { LengthDemand, LengthSolver, LengthStock } from "../model.ts";
import { barSettings, countOf } from "../settings.ts";
import type { SawnPiece } from "./pieces.ts";
import { gathered } from "./pieces.ts";
import type { CostUnit, LengthPart } from "./plan.ts";

/** How many improving steps one section may take. */
const BUDGET = 60;

const BATTENS: ReadonlySet<PieceKind> = new Set(["batten", "counter-batten", "rail", "post"]);

/** A section that is bought in lengths: a batten or a board of the project's stock. */
export interface BoughtSection {
  readonly id: string;
  readonly width: number;
  readonly thickness: number;
  readonly lengths: readonly number[];
  readonly pricePerM?: number | undefined;
}

export function lengthParts(project: Project, sawn: readonly SawnPiece[], solve: LengthSolver): LengthPart[] {
  const pieces = sawn.map(({ piece }) => piece);
  const battens = gathered(
    pieces.filter(({ kind }) => BATTENS.has(kind)),
    ({ stock }) => stock ?? "",
  );
  const backing = gathered(
    pieces.filter(({ kind }) => kind === "backing"),
    ({ cut: { width, thickness } }) => `${width} ${thickness}`,
  );
  return [
    ...[...battens].map(([id, group]) =>
      lengthPart({
        use: "battens",
        pieces: group,
        section: project.stock.battens.find((one) => one.id === id),
        kerf: project.stock.saw.kerf,
        solve,
      }),
    ),
    ...[...backing.values()].map((group) =>
      lengthPart({
        use: "backing",
        pieces: group,
        section: backingSection(project, group),
        kerf: project.stock.saw.kerf,
        solve,
      }),
    ),
  ];
}

/** Backing is as thick as it is drawn; the narrowest batten in stock that is wide enough serves. */
function backingSection(project: Project, [first]: readonly Piece[]): BoughtSection | undefined {
  return narrowest(
    project.stock.battens.filter(
      ({ width, thickness }) =>
        first !== undefined && sameLength(thickness, first.cut.thickness) && width >= first.cut.width,
    ),
  );
}

export function narrowest<Section extends BoughtSection>(sections: readonly Section[]): Section | undefined {
  return [...sections].sort((a, b) => a.width - b.width || a.thickness - b.thickness)[0];
}

/**
 * Cuts pieces from the lengths of one section. Bought lengths have clean square ends, so no end is trimmed. A piece
 * narrower than its section takes the section's whole width: it is ripped after it is cut.
 */
export function lengthPart({
  use,
  pieces,
  section,
  kerf,
  solve,
}: {
  readonly use: LengthPart["use"];
  readonly pieces: readonly Piece[];
  readonly section: BoughtSection | undefined;
  readonly kerf: number;
  readonly solve: LengthSolver;
}): LengthPart {
  const name = section?.id ?? "";
  const stock = section === undefined ? [] : lengthsOf(section);
  const request = { stock, demands: pieces.map((piece) => demandOf(piece, name)), kerf, budget: BUDGET };
  const result = solve(request);
  const materials = [...new Set(pieces.map(({ material }) => material))];
  return {
    use,
    ...(section === undefined ? {} : { stock: section.id }),
    material: materials.length === 1 ? (materials[0] ?? "") : "",
    width: section?.width ?? greatestOf(pieces.map(({ cut }) => cut.width)),
    thickness: section?.thickness ?? greatestOf(pieces.map(({ cut }) => cut.thickness)),
    request,
    result,
    costIn: costUnit(section),
    settings: countOf(result.plan.bars.map(barSettings)),
  };
}

function costUnit(section: BoughtSection | undefined): CostUnit {
  return section?.pricePerM === undefined ? "m" : "money";
}

function lengthsOf({ id, width, thickness, lengths, pricePerM }: BoughtSection): LengthStock[] {
  return [...new Set(lengths)].map((length) => ({
    id: `${id} ${length}`,
    length,
    section: id,
    width,
    thickness,
    sound: [{ from: 0, to: length }],
    ...(pricePerM === undefined ? {} : { cost: (pricePerM * length) / 1000 }),
  }));
}

function demandOf({ mark, cut }: Piece, section: string): LengthDemand {
  return { id: mark, length: cut.length, section, minWidth: cut.width, minThickness: cut.thickness };
}

function greatestOf(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, value), 0);
}
