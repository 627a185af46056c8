/** P008: a caution where combustible boards face a near boundary. It never clears a wall: the local code does. */
import { type Finding, finding } from "../findings/finding.ts";
import { message } from "../text/message.ts";
import { boardZones, type FaceContext, type ZoneView } from "./context.ts";
import { rulesAsking } from "./rules-asking.ts";
import { compared, holds, input, written } from "./working.ts";

export function boundaryFire(context: FaceContext): Finding[] {
  return boardZones(context).map((view) => judged(context, view));
}

function judged({ demands }: FaceContext, view: ZoneView): Finding {
  const where = { path: `${view.facePath}/toBoundary`, ...view.where };
  const hint = message("proof.ask-local-code");
  const given = view.projectFace.toBoundary;
  if (given === undefined) {
    return finding({
      code: "P008",
      outcome: "cannot evaluate",
      where,
      says: message("proof.fire.no-distance"),
      hint,
      source: { kind: "common practice" },
    });
  }
  // Nobody says from which plane the distance was taken: the cladding's face is the nearer one.
  const reach = view.plane?.faceZ ?? 0;
  const demand = given - reach;
  const limit = demands.boundaryCautionMm;
  const far = holds("at least", { demand, limit });
  const restricting = demands.boundary.filter(({ value }) => !holds("at least", { demand, limit: value }));
  const key = far ? "far" : restricting.length > 0 ? "restricted" : "near";
  return finding({
    code: "P008",
    outcome: far ? "not applicable" : "attention",
    where,
    says: message(`proof.fire.${key}`, {
      distance: demand,
      caution: limit,
      rules: rulesAsking(key === "restricted" ? restricting : demands.boundary, "mm"),
    }),
    ...(far ? {} : { hint }),
    ...compared("at least", { demand, limit, unit: "mm" }),
    working: {
      formula: "a − z ≥ a_c",
      inputs: [
        input("a", { meaning: "boundary-distance", value: given, unit: "mm", basis: "given" }),
        input("z", { meaning: "cladding-reach", value: reach, unit: "mm", basis: "derived" }),
        input("a_c", { meaning: "boundary-caution", value: limit, unit: "mm", basis: "typical" }),
      ],
      substituted: `${given} − ${written(reach)} = ${written(demand)} ${far ? "≥" : "<"} ${limit}`,
    },
    source: restricting[0]?.source ?? { kind: "common practice" },
  });
}
