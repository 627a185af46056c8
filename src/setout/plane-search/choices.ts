/** What can stand behind a cladding: a batten or rail of the stock in each place, and packers of the stock summed. */
import type { BattenStock, BuildUp, Layer, Project } from "../../project/schema/project.ts";
import { snap } from "../../units/length.ts";
import { battenStock } from "../resolve.ts";

/** More pieces behind one batten, or a higher pile, is no packing any more (common practice): a ripped batten does it. */
const MOST_PACKERS = 4;
const MOST_PACKING_MM = 20;

/** One way to build a build-up, with the depths that follow. */
export interface Choice {
  /** Battens and the rails across them, from the sheathing outward. */
  readonly battens: readonly BattenStock[];
  readonly packers: readonly number[];
  readonly packing: number;
  /** Back of the cladding. */
  readonly backZ: number;
  readonly cavity: number;
  /** What the batten's screw passes before it reaches the stud, sheathing included. */
  readonly toStud: number;
  /** What lies between the outermost batten or rail and the cladding. */
  readonly inFront: number;
  /** Thickness of the outermost batten or rail, which holds the cladding's screws. */
  readonly holder: number;
  /** What the rail's screw passes before it reaches the batten, and that batten's thickness; where there are rails. */
  readonly rail?: { readonly toBatten: number; readonly batten: number };
}

/** Every choice for a build-up, thinnest first. */
export function choicesOf(project: Project, buildUp: BuildUp): Choice[] {
  const slots = battensIn(project, buildUp).map((present) => battensFor(project.stock.battens, present));
  const sums = packerSums(project.stock.packers);
  return combinations(slots)
    .flatMap((battens) => sums.map((packers) => choice(project, buildUp, { battens, packers })))
    .sort((a, b) => a.backZ - b.backZ || a.packers.length - b.packers.length || a.packing - b.packing);
}

/** The build-up as the project has it; its packers stand as layers, not as pieces of the stock. */
export function presentChoice(project: Project, buildUp: BuildUp): Choice {
  const packers = buildUp.layers.flatMap((layer) => (layer.kind === "packer" ? [layer.thickness] : []));
  return choice(project, buildUp, { battens: battensIn(project, buildUp), packers });
}

function battensIn(project: Project, { layers }: BuildUp): BattenStock[] {
  return layers.flatMap((layer) => (isOfBattens(layer) ? [battenStock(project, layer.stock)] : []));
}

/** Battens, and rails across them, are sawn from the battens of the stock. */
export function isOfBattens(layer: Layer): layer is Extract<Layer, { kind: "batten" | "rail" }> {
  return layer.kind === "batten" || layer.kind === "rail";
}

/**
 * One batten of the stock for each thickness: the present one, else one as wide (a narrower one may not reach both sheets
 * of a joint), then the next wider; of equals the cheapest.
 */
function battensFor(stock: readonly BattenStock[], present: BattenStock): BattenStock[] {
  const thicknesses = [...new Set(stock.map(({ thickness }) => thickness))];
  const off = ({ width }: BattenStock): number =>
    width >= present.width ? width - present.width : NARROWER + present.width - width;
  return thicknesses.flatMap((thickness) =>
    stock
      .filter((batten) => batten.thickness === thickness)
      .sort(
        (a, b) =>
          Number(b.id === present.id) - Number(a.id === present.id) ||
          off(a) - off(b) ||
          (a.pricePerM ?? 0) - (b.pricePerM ?? 0),
      )
      .slice(0, 1),
  );
}

/** Any narrower batten comes after every wider one (mm). */
const NARROWER = 1e6;

/** Every sum of packers within reach, nothing among them, each of the fewest pieces, thickest first. */
function packerSums(stock: readonly number[]): (readonly number[])[] {
  const sizes = [...new Set(stock)].sort((a, b) => b - a);
  const found = new Map<number, readonly number[]>([[0, []]]);
  let piles: { sum: number; packers: number[] }[] = [{ sum: 0, packers: [] }];
  for (let count = 1; count <= MOST_PACKERS; count++) {
    piles = piles.flatMap(({ sum, packers }) =>
      sizes
        .filter((size) => size <= (packers.at(-1) ?? size) && sum + size <= MOST_PACKING_MM)
        .map((size) => ({ sum: snap(sum + size), packers: [...packers, size] })),
    );
    for (const { sum, packers } of piles) if (!found.has(sum)) found.set(sum, packers);
  }
  return [...found].sort(([a], [b]) => a - b).map(([, packers]) => packers);
}

export function combinations<Thing>(slots: readonly (readonly Thing[])[]): Thing[][] {
  return slots.reduce<Thing[][]>(
    (made, slot) => made.flatMap((before) => slot.map((one) => [...before, one])),
    [[]],
  );
}

function choice(
  project: Project,
  buildUp: BuildUp,
  { battens, packers }: Pick<Choice, "battens" | "packers">,
): Choice {
  const packing = packers.reduce((sum, one) => snap(sum + one), 0);
  const packed = packingPlace(buildUp.layers);
  let z = 0;
  let slot = 0;
  /** Outer side of what closes the cavity at its back, and the back of what ends it in front. */
  let back = 0;
  let front: number | undefined;
  let battenTop = 0;
  let holderTop = 0;
  buildUp.layers.forEach((layer, i) => {
    if (i === packed) z = snap(z + packing);
    // What was packed before is packed anew.
    if (layer.kind === "packer") return;
    // Rails lie across the cavity: what drains and breathes is the room behind them.
    if (layer.kind === "rail") front ??= z;
    z = snap(z + (isOfBattens(layer) ? (battens[slot]?.thickness ?? 0) : layer.thickness));
    if (layer.kind === "membrane" || layer.kind === "insulation") back = z;
    if (layer.kind === "batten" && battenTop === 0) battenTop = z;
    if (!isOfBattens(layer)) return;
    slot += 1;
    holderTop = z;
  });
  return {
    battens,
    packers,
    packing,
    backZ: z,
    cavity: snap((front ?? z) - back),
    toStud: snap(battenTop + project.structure.sheathingThickness),
    inFront: snap(z - holderTop),
    holder: battens.at(-1)?.thickness ?? 0,
    ...(front !== undefined && {
      rail: { toBatten: snap(holderTop - battenTop), batten: battens[0]?.thickness ?? 0 },
    }),
  };
}

/** Where the packers stand: where the first one is, else right behind the batten. */
export function packingPlace(layers: readonly Layer[]): number {
  const packer = layers.findIndex(({ kind }) => kind === "packer");
  return packer >= 0 ? packer : layers.findIndex(({ kind }) => kind === "batten");
}
