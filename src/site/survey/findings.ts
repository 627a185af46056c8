/** What a survey finds: M001 to M005, each against the packing that is chosen. */
import { type Finding, finding, type Source } from "../../findings/finding.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import type { Project } from "../../project/schema/project.ts";
import { compared, holds } from "../../proof/working.ts";
import type { Facade, ZonePlane } from "../../setout/facade.ts";
import { message } from "../../text/message.ts";
import type { PackedCrossing, Packing, SurveyedFace } from "./packing.ts";
import { type Lean, planeAt } from "./plane.ts";
import { type Reading, repeatError, type Spot } from "./reading.ts";

interface Surveyed {
  readonly facade: Facade;
  readonly project: Project;
  readonly surveyed: SurveyedFace;
  /** Of all faces: the error is the instrument's and the hand's. */
  readonly readings: readonly Reading[];
}

/** How far battens may lean on a surveyed wall (mm in a metre), common practice where the project does not tell. */
const USUAL_LEAN = 2;

export function leanOf({ limits: { lean } }: Project): Lean {
  return { mmPerM: lean?.value ?? USUAL_LEAN };
}

/** @param packing undefined where no crossing was read */
export function surveyFindings(survey: Surveyed, packing: Packing | undefined): Finding[] {
  if (survey.surveyed.spots.length === 0) return [notRead(survey.surveyed.face)];
  return [
    errorOf(survey),
    ...unread(survey.surveyed),
    ...(packing
      ? [packingLimit(survey, packing), biteLeft(survey, packing), ...cavities(survey, packing)]
      : []),
  ];
}

function notRead(face: string): Finding {
  return finding({
    code: "M002",
    outcome: "cannot evaluate",
    where: { face },
    says: message("survey.none", { face }),
    hint: message("survey.unread.hint"),
  });
}

function errorOf({ surveyed: { face }, readings }: Surveyed): Finding {
  const error = repeatError(readings);
  const source: Source = { kind: "common practice" };
  if (!error) {
    const [says, hint] = [message("survey.error.none", { face }), message("survey.error.hint")];
    return finding({ code: "M001", outcome: "cannot evaluate", where: { face }, says, hint, source });
  }
  const { deviation, freedom } = error;
  return finding({
    code: "M001",
    outcome: "pass",
    where: { face },
    says: message("survey.error.known", { deviation, freedom }),
    source: { kind: "document", document: "ISO 5725-2", clause: "repeatability variance" },
  });
}

function unread({ face, unread: crossings }: SurveyedFace): Finding[] {
  const [first] = crossings;
  if (!first) return [];
  return [
    finding({
      code: "M002",
      outcome: "cannot evaluate",
      where: {
        face,
        zone: first.zone,
        marks: [...new Set(crossings.map(({ batten }) => batten))],
        at: [first.x, first.y],
      },
      says: message("survey.unread", { count: crossings.length, face }),
      hint: message("survey.unread.hint"),
      source: { kind: "common practice" },
    }),
  ];
}

function placeOf(face: string, { batten, zone, x, y }: PackedCrossing) {
  return { face, zone, marks: [batten], at: [x, y] as const };
}

function packingLimit({ project, surveyed: { face } }: Surveyed, { crossings, most }: Packing): Finding {
  const deepest = crossings.reduce((a, b) => (b.wanted > a.wanted ? b : a));
  const where = { path: "/limits/packing", ...placeOf(face, deepest) };
  const agreed = project.limits.packing;
  if (!agreed) {
    return finding({
      code: "M003",
      outcome: "cannot evaluate",
      where,
      says: message("survey.packing.no-limit", { face, most }),
      hint: message("survey.packing.no-limit.hint"),
      demand: most,
      unit: "mm",
    });
  }
  const limit = agreed.value;
  const within = holds("at most", { demand: most, limit });
  return finding({
    code: "M003",
    outcome: within ? "pass" : "fail",
    where,
    says: message(within ? "survey.packing.within" : "survey.packing.over", { face, most, limit }),
    ...(within ? {} : { hint: message("survey.packing.over.hint") }),
    ...compared("at most", { demand: most, limit, unit: "mm" }),
    source: sourceOf(agreed.source),
  });
}

function biteLeft({ project, surveyed: { face } }: Surveyed, { crossings }: Packing): Finding {
  const { value: limit, source } = project.limits.screwBite.studs;
  const least = crossings.reduce((a, b) => (b.biteLeft < a.biteLeft ? b : a));
  const short = crossings.filter(({ biteLeft: left }) => !holds("at least", { demand: left, limit }));
  const values = {
    face,
    bite: least.biteLeft,
    least: limit,
    packing: least.packers.reduce((sum, one) => sum + one, 0),
  };
  return finding({
    code: "M004",
    outcome: short.length === 0 ? "pass" : "fail",
    where: {
      ...placeOf(face, least),
      ...(short.length > 0 && { marks: [...new Set(short.map(({ batten }) => batten))] }),
    },
    says: message(short.length === 0 ? "survey.bite.enough" : "survey.bite.short", values),
    ...(short.length > 0 && { hint: message("survey.bite.hint", { count: short.length }) }),
    ...compared("at least", { demand: least.biteLeft, limit, unit: "mm" }),
    source: sourceOf(source),
  });
}

/** The cavity at the reading where the wall reaches furthest into it, zone by zone. */
function cavities({ facade, project, surveyed }: Surveyed, { plane }: Packing): Finding[] {
  const layout = facade.faces.find(({ id }) => id === surveyed.face);
  return (layout?.zones ?? []).flatMap(({ id: zone, region }): Finding[] => {
    const set = facade.planes.find((one) => one.face === surveyed.face && one.zone === zone);
    const { x, y } = polygonBounds(region);
    const within = surveyed.spots.filter(
      (spot) => spot.x >= x[0] && spot.x <= x[1] && spot.y >= y[0] && spot.y <= y[1],
    );
    const [first, ...rest] = within;
    if (!set || !first) return [];
    const depth = (spot: Spot): number => depthAt(set, planeAt(plane, spot.x, spot.y) - spot.outward);
    const shallowest = rest.reduce((a, b) => (depth(b) < depth(a) ? b : a), first);
    const { value: limit, source } = project.limits.cavityMin;
    const demand = depth(shallowest);
    const enough = holds("at least", { demand, limit });
    return [
      finding({
        code: "M005",
        outcome: enough ? "pass" : "fail",
        where: { face: surveyed.face, zone, at: [shallowest.x, shallowest.y] },
        says: message(enough ? "survey.cavity.enough" : "survey.cavity.shallow", {
          face: surveyed.face,
          zone,
          depth: demand,
          least: limit,
        }),
        ...(enough ? {} : { hint: message("survey.cavity.hint") }),
        ...compared("at least", { demand, limit, unit: "mm" }),
        source: sourceOf(source),
      }),
    ];
  });
}

/** The cavity as drawn, deeper by what the battens' backs stand off the wall. */
function depthAt({ cavity }: ZonePlane, off: number): number {
  return cavity + off;
}

function sourceOf(document: string | undefined): Source {
  return document ? { kind: "document", document } : { kind: "your project" };
}
