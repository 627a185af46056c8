/** A survey in its published shape. */
import type { Finding } from "../../findings/finding.ts";
import { findingJson } from "../../output/json/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Waiver } from "../../project/waivers.ts";
import { type PackingCost, packingCost } from "../../site/survey/cost.ts";
import type { CornerStep } from "../../site/survey/joined.ts";
import type { SurveyedFace } from "../../site/survey/packing.ts";
import { type Lean, planeAt } from "../../site/survey/plane.ts";
import type { RepeatError } from "../../site/survey/reading.ts";
import type { Reader } from "../../text/say.ts";
import type { PackJson } from "../shapes/pack.ts";

export interface PackFacts {
  readonly faces: readonly SurveyedFace[];
  readonly corners: readonly CornerStep[];
  readonly lean: Lean;
  readonly project: Pick<Project, "packingWork">;
  readonly error: RepeatError | undefined;
  readonly findings: readonly Finding[];
  readonly waivers?: readonly Waiver[] | undefined;
}

export function packJson(
  { faces, corners, lean, project, error, findings, waivers }: PackFacts,
  reader: Reader,
): PackJson {
  return {
    schemaVersion: 1,
    leanPerM: lean.mmPerM,
    ...(error && { repeatError: { ...error } }),
    faces: faces.map(({ face, spots, nearest, band, twist, unread, packings }) => ({
      face,
      readings: spots.map(({ x, y, outward, times }) => ({
        x,
        y,
        outward,
        times,
        ...(nearest && { nearest: outward - planeAt(nearest.plane, x, y) }),
      })),
      ...(nearest && { leastSquares: { plane: { ...nearest.plane }, most: nearest.most } }),
      ...(band && { smallestBand: { plane: { ...band.plane }, half: band.half } }),
      ...(twist !== undefined && { twist }),
      unread: unread.map(({ batten, x, y }) => ({ batten, x, y })),
      packings: packings.map((packing) => ({
        kind: packing.kind,
        plane: { ...packing.plane },
        sum: packing.sum,
        most: packing.most,
        packers: packing.packers.map((one) => ({ ...one })),
        cost: costJson(packingCost(packing, project)),
        crossings: packing.crossings.map(
          ({ batten, zone, x, y, wall, wanted, packers: put, off, planeOff, biteLeft }) => ({
            batten,
            zone,
            x,
            y,
            wall,
            wanted,
            packers: [...put],
            off,
            planeOff,
            biteLeft,
          }),
        ),
      })),
    })),
    corners: corners.map((corner) => ({ ...corner })),
    findings: findings.map((finding) => findingJson(finding, { reader, waivers })),
  };
}

function costJson({ lacks, ...cost }: PackingCost) {
  return { ...cost, lacks: [...lacks] };
}
