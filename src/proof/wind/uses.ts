/** How far wind uses every sheet, board, rail, batten and screw of the faces: what is painted on the elevation. */
import type { Demands } from "../../codes/demands.ts";
import type { WindDemand } from "../../codes/packs/index.ts";
import type { Point } from "../../geometry/point.ts";
import { type FacelessProject, type ZonesInput, zoneViews } from "../context.ts";
import { faceContexts } from "../face-contexts.ts";
import { netWind, type WindBand, windBands } from "./bands.ts";
import { type BentMember, bentMembers } from "./bending.ts";
import { screwShares } from "./members.ts";
import { type Part, sagLimit } from "./sag-limit.ts";
import { type Governs, screwJudge } from "./screw-hold.ts";
import { windStudies, type ZoneStudy } from "./study.ts";

/** What gives first: of screws what they are judged by, of what bends its strength or its sag. */
export type UseGoverns = Governs | "strength" | "sag";

export interface PartUse {
  /** Of the piece; of a screw, of the piece that it holds. */
  readonly mark: string;
  /** Of what it holds or may sag, 1 at the limit; undefined where something is missing to judge it. */
  readonly use: number | undefined;
  readonly governs: UseGoverns;
}

export interface ScrewPlaceUse extends PartUse {
  readonly at: Point;
  readonly holds: Part;
}

export interface BandPressure extends WindBand {
  /** Outward and inward on a small area, before factors (Pa). */
  readonly pullPa: number;
  readonly pushPa: number;
}

export interface FaceUse {
  readonly face: string;
  readonly bands: readonly BandPressure[];
  readonly skins: readonly PartUse[];
  readonly carriers: readonly PartUse[];
  readonly screws: readonly ScrewPlaceUse[];
}

/** What the wind on some faces is judged from: no face answers for another. */
export interface WindInput extends ZonesInput {
  readonly project: FacelessProject & ZonesInput["project"];
  readonly demands: Demands;
}

/** Face by face; nothing where the wind is not known. */
export function windUses({ project, facade, demands }: WindInput): FaceUse[] {
  const zones = zoneViews({ project, facade });
  return faceContexts({ project, demands, zones }).flatMap((context): FaceUse[] => {
    const studies = windStudies(context);
    const [first] = studies;
    if (!first) return [];
    const { wind, bands } = first;
    return [
      {
        face: first.view.face.id,
        bands: bands.map((band) => pressureOn(band, wind)),
        skins: studies.flatMap((study) => bending(study, context.project, "skin")),
        carriers: studies.flatMap((study) => bending(study, context.project, "carriers")),
        screws: studies.flatMap((study) => screws(study, context.project)),
      },
    ];
  });
}

/** The strips of a face with their pressures, whatever its parts are. */
export function bandPressures(face: Parameters<typeof windBands>[0], wind: WindDemand): BandPressure[] {
  return windBands(face, wind).map((band) => pressureOn(band, wind));
}

function pressureOn(band: WindBand, wind: WindDemand): BandPressure {
  const { pullPa, pushPa } = netWind(wind, [band], { x: band.x, areaM2: 0 });
  return { ...band, pullPa, pushPa };
}

type Project = Parameters<typeof bentMembers>[1];

function bending(study: ZoneStudy, project: Project, part: Part): PartUse[] {
  const members = part === "skin" ? study.skins : study.carriers;
  const bent = new Map(bentMembers(study, project, members).bent.map((one) => [one.member, one] as const));
  const over = sagLimit(study, project, part)?.over;
  return members.map((member): PartUse => {
    const { mark } = member.piece;
    const one = bent.get(member);
    return one ? bendingUse(mark, one, over) : { mark, use: undefined, governs: "strength" };
  });
}

function bendingUse(
  mark: string,
  { stressMPa, grade, sagMm, spanMm }: BentMember,
  over: number | undefined,
): PartUse {
  const strength = stressMPa / grade.strengthMPa;
  if (over === undefined)
    return { mark, use: strength > 1 ? strength : undefined, governs: strength > 1 ? "strength" : "sag" };
  const sag = spanMm > 0 ? (sagMm * over) / spanMm : 0;
  return strength >= sag ? { mark, use: strength, governs: "strength" } : { mark, use: sag, governs: "sag" };
}

function screws(study: ZoneStudy, project: Project): ScrewPlaceUse[] {
  const judge = screwJudge(study, project);
  const of = (part: Part): ScrewPlaceUse[] =>
    (part === "skin" ? study.skins : study.carriers).flatMap((member) =>
      judge.uses(member, screwShares(member)).map(
        ({ share: { fixing }, use, governs, lacks, held }): ScrewPlaceUse => ({
          mark: member.piece.mark,
          at: [fixing.x, fixing.y],
          holds: part,
          use: held !== undefined && (lacks.length === 0 || use > 1) ? use : undefined,
          governs,
        }),
      ),
    );
  return [...of("carriers"), ...of("skin")];
}
