/** What is to be said of an opening's returns: set out, or why not. */
import { type Finding, finding, type Source } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { type Message, message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import { bendDeduction, NEUTRAL_LINE, USUAL_FOLD } from "../bent-metal.ts";
import type { Piece } from "../facade.ts";
import type { Asked } from "./asked.ts";
import type { Side } from "./carriers.ts";
import { edgesOf } from "./rows.ts";
import { LEAST_LEG_MM, type Trim } from "./trims.ts";

const PRACTICE: Source = { kind: "common practice" };

interface At {
  readonly face: string;
  readonly opening: string;
  readonly path: string;
}

/** No returns can be asked for here, or not yet. */
export function notAsked(at: At, why: "recess" | "no-frame" | "corner"): Finding {
  return finding({
    code: "S027",
    outcome: why === "no-frame" ? "cannot evaluate" : "fail",
    where: { face: at.face, opening: at.opening, path: why === "recess" ? `${at.path}/reveal` : at.path },
    says: message(`setout.return.${why}`, { of: at.opening }),
    hint: message(`setout.return.${why}.hint`),
    source: PRACTICE,
  });
}

/** Whether returns would be narrower than their screws' edge distances allow: the data sheet's, or the boards' rule. */
export function isShallow({ cladding, z }: Asked): boolean {
  return Math.max(0, z[1] - z[0]) < snap(2 * edgesOf(cladding)[0]);
}

/** Narrower than its screws' edge distances allow, or wider than what it is cut from. */
export function widthFault(asked: Asked): Finding | undefined {
  const { cladding, z, opening, reveal } = asked;
  const width = snap(Math.max(0, z[1] - z[0]));
  const least = snap(2 * edgesOf(cladding)[0]);
  const widest = cladding.kind === "boards" ? Math.max(...cladding.widths) : Number.POSITIVE_INFINITY;
  const shallow = isShallow(asked);
  if (!shallow && width <= widest) return undefined;
  const limit = shallow ? least : widest;
  return finding({
    code: "S027",
    outcome: "fail",
    where: whereOf(asked),
    says: message(`setout.return.${shallow ? "shallow" : "wide"}`, { of: opening.id, reveal, width, limit }),
    hint: message(`setout.return.${shallow ? "shallow" : "wide"}.hint`),
    demand: width,
    limit,
    unit: "mm",
    source: shallow && cladding.kind === "sheets" ? { kind: "your data sheet" } : PRACTICE,
  });
}

/** Sides beside which no timber holds a screw where one must stand. */
export function unheld(asked: Asked, sides: readonly Side[]): Finding {
  const named = sides.map((side): Message => message(`setout.return.side.${side}`));
  return finding({
    code: "S027",
    outcome: "fail",
    where: whereOf(asked),
    says: message("setout.return.unheld", {
      of: asked.opening.id,
      sides: named,
      from: asked.z[0],
      to: asked.z[1],
    }),
    hint: message("setout.return.unheld.hint"),
    source: PRACTICE,
  });
}

export function laidOut(asked: Asked, pieces: readonly Piece[]): Finding {
  const { opening, z, reveal, gap, frame } = asked;
  const width = snap(z[1] - z[0]);
  const back = asked.at.plane.faceZ - z[1];
  const given = (symbol: string, meaning: string, value: number, basis: "given" | "derived") =>
    ({ symbol, meaning: message(`setout.return.${meaning}`), value, unit: "mm", basis }) as const;
  return finding({
    code: "S027",
    outcome: "pass",
    where: whereOf(asked, pieces),
    says: message("setout.return", { of: opening.id, pieces: pieces.length, width, reveal, gap }),
    hint: message("setout.return.hint"),
    demand: width,
    limit: snap(2 * edgesOf(asked.cladding)[0]),
    unit: "mm",
    working: {
      formula: "b = (z_f − p) − g − s",
      inputs: [
        given("z_f", "plane", asked.at.plane.faceZ, "derived"),
        given("p", "frame", frame, "given"),
        given("g", "gap", gap, opening.reveal?.gap === undefined ? "derived" : "given"),
        given("s", "behind", snap(back), "derived"),
      ],
      substituted: `(${asked.at.plane.faceZ} − ${frame}) − ${gap} − ${snap(back)} = ${width}`,
    },
    source: PRACTICE,
  });
}

export function trimsLaid(asked: Asked, trims: readonly Trim[]): Finding {
  const [first] = trims;
  const legs = first?.legs ?? [];
  const width = first?.piece.cut.width ?? 0;
  const bends = Math.max(0, legs.length - 1);
  const given = (symbol: string, meaning: string, value: number, unit: "mm" | "") =>
    ({ symbol, meaning: message(`setout.trim.${meaning}`), value, unit, basis: "derived" }) as const;
  return finding({
    code: "S027",
    outcome: "pass",
    where: whereOf(
      asked,
      trims.map(({ piece }) => piece),
    ),
    says: message("setout.trim", { of: asked.opening.id, reveal: asked.reveal, width }),
    hint: message("setout.trim.hint"),
    demand: Math.min(...trims.flatMap((trim) => trim.legs)),
    limit: LEAST_LEG_MM,
    unit: "mm",
    working: {
      formula: "b = Σl − n · (2 (r + t) − π/2 · (r + k · t))",
      inputs: [
        given("l", "legs", snap(legs.reduce((sum, leg) => sum + leg, 0)), "mm"),
        given("n", "bends", bends, ""),
        given("r", "radius", USUAL_FOLD.radius, "mm"),
        given("t", "thickness", USUAL_FOLD.thickness, "mm"),
        given("k", "neutral", NEUTRAL_LINE, ""),
      ],
      substituted: `(${legs.join(" + ")}) − ${bends} · ${snap(bendDeduction(Math.PI / 2, USUAL_FOLD))} = ${width}`,
    },
    source: PRACTICE,
  });
}

/** A return's shortest hold in its timber, where it is less than the project's bite. */
export function bite({ limits }: Project, asked: Asked, pieces: readonly Piece[]): Finding | undefined {
  const limit = limits.screwBite.cladding;
  const least = Math.min(...pieces.flatMap(({ fixings }) => fixings.map((one) => one.bite)));
  if (pieces.length === 0 || least >= limit.value) return undefined;
  const [first] = pieces;
  return finding({
    code: "S016",
    outcome: "fail",
    where: whereOf(asked, pieces),
    says: message("setout.bite.cladding", {
      screw: asked.cladding.screw,
      bite: least,
      limit: limit.value,
      into: first?.fixings.find((one) => one.bite === least)?.into ?? "",
    }),
    hint: message("setout.bite.hint"),
    demand: least,
    limit: limit.value,
    unit: "mm",
    source: PRACTICE,
  });
}

function whereOf({ at, opening, path }: Asked, pieces: readonly Piece[] = []): Finding["where"] {
  return {
    face: at.ground.face.id,
    zone: at.ground.zone.id,
    opening: opening.id,
    path,
    ...(pieces.length > 0 && { marks: pieces.map(({ mark }) => mark) }),
  };
}
