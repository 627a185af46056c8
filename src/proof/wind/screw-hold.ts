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

/** Screws that hold alike: compared field by field, as there are few kinds of them and many of each. */
interface LikeScrews {
  readonly screw: ScrewAsked["screw"];
  readonly bite: number;
  readonly sideMm: number;
  readonly carries: boolean;
  readonly holder: Piece | undefined;
  readonly under: Piece;
  readonly holds: Holds;
}

export interface ScrewJudge {
  readonly uses: (member: Member, shares: readonly ScrewShare[]) => ScrewUse[];
}

/** Judges the screws of a zone; what like screws hold is worked out once. */
export function screwJudge(study: ZoneStudy, project: FacelessProject): ScrewJudge {
  const { view, structure, wind, lies } = study;
  const pack = structurePack(structure.code);
  const pieces = new Map(view.face.pieces.map((piece) => [piece.mark, piece]));
  const known: LikeScrews[] = [];

  const stock = new Map(project.stock.screws.map((screw) => [screw.id, screw]));

  const holdsOf = (member: Member, { fixing }: ScrewShare, carries: boolean): Holds | undefined => {
    const screw = stock.get(fixing.screw);
    if (!screw) return undefined;
    const holder = pieces.get(fixing.into);
    const sideMm = sideOf(member, fixing.through);
    const { bite } = fixing;
    const { kind, material, stock: cutFrom } = member.piece;
    for (const one of known)
      if (
        one.screw === screw &&
        one.bite === bite &&
        one.sideMm === sideMm &&
        one.carries === carries &&
        one.holder?.material === holder?.material &&
        one.holder?.stock === holder?.stock &&
        one.under.kind === kind &&
        one.under.material === material &&
        one.under.stock === cutFrom
      )
        return one.holds;
    const asked: ScrewAsked = {
      screw,
      coreShare: structure.coreShare,
      biteMm: fixing.bite,
      holder: woodOf(study, project, holder),
      under:
        member.piece.kind === "sheet" && view.cladding.kind === "sheets"
          ? { kind: "sheet", sheet: view.cladding }
          : { kind: "wood", wood: woodOf(study, project, member.piece), thicknessMm: sideMm },
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
    known.push({ screw, bite, sideMm, carries, holder, under: member.piece, holds });
    return holds;
  };

  return {
    uses: (member, shares) => {
      const weightN = member.piece.massKg * G * wind.dead.value;
      let fixed = 0;
      for (const { fixing } of shares) if (fixing.kind === "fixed") fixed++;
      const bearing = fixed > 0 ? fixed : shares.length;
      const net = windAt(study, member.box.x);
      const factoredPa = net.pullPa * wind.strength.value;
      const hangs = lies ? weightN / shares.length : 0;
      const uses: ScrewUse[] = [];
      for (const share of shares) {
        const { fixing } = share;
        const bears = !lies && (fixed === 0 || fixing.kind === "fixed") && !passesSoft(fixing);
        const shearN = bears ? weightN / bearing : 0;
        const pullN = (factoredPa * share.areaMm2) / 1e6 + hangs;
        const holds = holdsOf(member, share, shearN > 0);
        if (!holds) continue;
        const { use, governs, held, basis } = judged(pack, holds, { pullN, shearN });
        const { strip, pullPa, basis: windBasis } = net;
        // Written out: spreading objects would take longer than all else here.
        uses.push({
          share,
          member,
          pullN,
          shearN,
          strip,
          pullPa,
          wind: windBasis,
          use,
          governs,
          held,
          lacks: holds.lacks,
          basis,
        });
      }
      return uses;
    },
  };
}

/** Through a soft layer a screw bends: P011 judges its weight. */
function passesSoft({ through }: ScrewShare["fixing"]): boolean {
  for (const { what } of through) if (what === "insulation") return true;
  return false;
}

type Judged = Pick<ScrewUse, "use" | "governs" | "held" | "basis">;

const NOTHING_KNOWN: Judged = { use: 0, governs: "withdrawal", held: undefined, basis: "given" };

function judged(
  pack: ReturnType<typeof structurePack>,
  { along, shear }: Holds,
  { pullN, shearN }: { readonly pullN: number; readonly shearN: number },
): Judged {
  const [weakest] = along;
  if (!weakest) return NOTHING_KNOWN;
  const { held, governs } = weakest;
  const { basis } = held;
  const pulled = pullN / held.newton;
  if (!shear?.known || shearN === 0) return { use: pulled, governs, held, basis };
  const both = pack.combined({ pullN, shearN, pullHeldN: held.newton, shearHeldN: shear.newton });
  const across = shearN / shear.newton;
  const use = Math.max(pulled, across, both);
  if (use === pulled) return { use, governs, held, basis };
  return { use, governs: use === across ? "shear" : "combined", held, basis };
}

/** What of a piece lies under the head with what is solid behind it (mm): sheathing and packers bear with it (common practice). */
function sideOf({ piece }: Member, through: ScrewShare["fixing"]["through"]): number {
  const { thickness } = piece.cut;
  if (piece.kind === "board" || piece.kind === "sheet") return thickness;
  let solid = 0;
  for (const layer of through)
    if (layer.what !== "insulation" && layer.what !== "membrane" && layer.what !== "gasket")
      solid += layer.thickness;
  return Math.max(thickness, solid);
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
