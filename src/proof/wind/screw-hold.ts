/** How far a screw is used by wind and weight: out of its timber, through what lies under its head, across, and both at once. */

import { declared } from "../../codes/packs/held.ts";
import { type HeldAnswer, type ScrewAsked, structurePack } from "../../codes/packs/index.ts";
import type { Basis } from "../../findings/finding.ts";
import type { Piece } from "../../setout/facade.ts";
import type { FacelessProject } from "../context.ts";
import type { Member, ScrewShare } from "./members.ts";
import { windAt, type ZoneStudy } from "./study.ts";

export type Governs = "withdrawal" | "pull-through" | "tension" | "shear" | "combined";

export interface ScrewUse {
  readonly share: ScrewShare;
  readonly member: Member;
  /** Factored as the code compares it (N). */
  readonly pullN: number;
  readonly shearN: number;
  readonly strip: string;
  readonly pullPa: number;
  /** Of that pressure. */
  readonly wind: Basis;
  /** Above 1 it fails. */
  readonly use: number;
  readonly governs: Governs;
  /** What it holds where that governs; of both at once what it holds along. */
  readonly held: Extract<HeldAnswer, { known: true }> | undefined;
  /** Messages of what is not known and so not judged. */
  readonly lacks: readonly string[];
  readonly basis: Basis;
}

const G = 9.80665;

type Known = Extract<HeldAnswer, { known: true }>;

interface Holds {
  /** Along itself, the first to give first; empty where nothing is known. */
  readonly along: readonly { readonly governs: Governs; readonly held: Known }[];
  readonly shear: HeldAnswer | undefined;
  /** Messages of what is not known. */
  readonly lacks: readonly string[];
}

export interface ScrewJudge {
  readonly uses: (member: Member, shares: readonly ScrewShare[]) => ScrewUse[];
}

/** Judges the screws of a zone; what like screws hold is worked out once. */
export function screwJudge(study: ZoneStudy, project: FacelessProject): ScrewJudge {
  const { view, structure, wind, lies } = study;
  const pack = structurePack(structure.code);
  const pieces = new Map(view.face.pieces.map((piece) => [piece.mark, piece]));
  const known = new Map<string, Holds>();

  const holdsOf = (member: Member, { fixing }: ScrewShare, carries: boolean): Holds | undefined => {
    const screw = project.stock.screws.find(({ id }) => id === fixing.screw);
    if (!screw) return undefined;
    const holder = pieces.get(fixing.into);
    const side = sideOf(member, fixing.through);
    const key = [screw.id, fixing.bite, holder?.material, holder?.stock, side.mm, carries].join(" ");
    const before = known.get(key);
    if (before) return before;
    const asked: ScrewAsked = {
      screw,
      coreShare: structure.coreShare,
      biteMm: fixing.bite,
      holder: woodOf(study, project, holder),
      under:
        member.piece.kind === "sheet" && view.cladding.kind === "sheets"
          ? { kind: "sheet", sheet: view.cladding }
          : { kind: "wood", wood: woodOf(study, project, member.piece), thicknessMm: side.mm },
    };
    const { timber } = structure;
    const tension = declared(asked, timber, { value: "tensionN" });
    const ways: [Governs, HeldAnswer][] = [
      ["withdrawal", pack.withdrawal(asked, timber)],
      [
        "pull-through",
        asked.under.kind === "sheet" ? sheetHead(asked.under.sheet) : pack.headThroughWood(asked, timber),
      ],
      ...(tension ? ([["tension", tension]] as [Governs, HeldAnswer][]) : []),
    ];
    const shear = carries ? pack.shear(asked, timber) : undefined;
    const holds: Holds = {
      along: ways
        .flatMap(([governs, one]) => (one.known ? [{ governs, held: one }] : []))
        .sort((a, b) => a.held.newton - b.held.newton),
      shear,
      lacks: [...ways.map(([, one]) => one), ...(shear ? [shear] : [])].flatMap((one) =>
        one.known ? [] : [one.key],
      ),
    };
    known.set(key, holds);
    return holds;
  };

  return {
    uses: (member, shares) => {
      const weightN = member.piece.massKg * G * wind.dead.value;
      const fixed = shares.filter(({ fixing }) => fixing.kind === "fixed").length;
      const bearing = fixed > 0 ? fixed : shares.length;
      const net = windAt(study, member.box.x);
      return shares.flatMap((share) => {
        const weighs =
          weightN / (fixed > 0 && share.fixing.kind !== "fixed" ? Number.POSITIVE_INFINITY : bearing);
        // Through a soft layer a screw bends: P011 judges its weight.
        const soft = share.fixing.through.some(({ what }) => what === "insulation");
        const shearN = lies || soft ? 0 : weighs;
        const pullN =
          (net.pullPa * wind.strength.value * share.areaMm2) / 1e6 + (lies ? weightN / shares.length : 0);
        const holds = holdsOf(member, share, shearN > 0);
        if (!holds) return [];
        return [
          {
            share,
            member,
            pullN,
            shearN,
            strip: net.strip,
            pullPa: net.pullPa,
            wind: net.basis,
            ...judged(pack, holds, { pullN, shearN }),
          },
        ];
      });
    },
  };
}

function judged(
  pack: ReturnType<typeof structurePack>,
  { along: [weakest], shear, lacks }: Holds,
  { pullN, shearN }: { readonly pullN: number; readonly shearN: number },
): Pick<ScrewUse, "use" | "governs" | "held" | "lacks" | "basis"> {
  const best = weakest && { ...weakest, use: pullN / weakest.held.newton };
  const basis: Basis = best?.held.basis ?? "given";
  if (!best) return { use: 0, governs: "withdrawal", held: undefined, lacks, basis };
  if (!shear?.known || shearN === 0) return { ...best, lacks, basis };
  const both = pack.combined({
    pullN,
    shearN,
    pullHeldN: best.held.newton,
    shearHeldN: shear.newton,
  });
  const across = shearN / shear.newton;
  const use = Math.max(best.use, across, both);
  if (use === best.use) return { ...best, lacks, basis };
  return { use, governs: use === across ? "shear" : "combined", held: best.held, lacks, basis };
}

/** What of a piece lies under the head with what is solid behind it: sheathing and packers bear with it (common practice). */
function sideOf(member: Member, through: ScrewShare["fixing"]["through"]): { readonly mm: number } {
  const { piece } = member;
  if (piece.kind === "board" || piece.kind === "sheet") return { mm: piece.cut.thickness };
  const solid = through.filter(
    ({ what }) => what !== "insulation" && what !== "membrane" && what !== "gasket",
  );
  return {
    mm: Math.max(
      piece.cut.thickness,
      solid.reduce((sum, { thickness }) => sum + thickness, 0),
    ),
  };
}

function sheetHead({ dataSheet }: Extract<ScrewAsked["under"], { kind: "sheet" }>["sheet"]): HeldAnswer {
  const { pullThroughN, strengthLevel, materialFactor, basis } = dataSheet;
  if (pullThroughN === undefined) return { known: false, key: "structure.lack.sheet-pull-through" };
  if (strengthLevel === undefined) return { known: false, key: "structure.lack.strength-level" };
  if (strengthLevel === "characteristic" && materialFactor === undefined)
    return { known: false, key: "structure.lack.material-factor" };
  const factor = strengthLevel === "design" ? 1 : (materialFactor ?? 1);
  return {
    known: true,
    newton: pullThroughN / factor,
    basis,
    formula: "R / γ",
    substituted: `${pullThroughN} / ${factor}`,
    source: { kind: "your data sheet" },
  };
}

/** The wood of a piece; of what is no piece of the facade, that of the studs. */
function woodOf(
  { structure }: ZoneStudy,
  project: FacelessProject,
  piece: Piece | undefined,
): ScrewAsked["holder"] {
  const grade = project.stock.battens.find(({ id }) => id === piece?.stock)?.grade;
  const named = structure.woods[piece?.material ?? project.structure.studs.species];
  const wood = named ?? structure.timber.unnamed;
  return grade?.densityKgPerM3 === undefined
    ? wood
    : { ...wood, densityKgPerM3: grade.densityKgPerM3, basis: grade.basis };
}
