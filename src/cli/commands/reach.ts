/** `outerleaf reach`: what to take off, in which order, to reach a place of the wall or one piece. */
import { type Design, design } from "../../design.ts";
import type { Point } from "../../geometry/point.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { nearest } from "../../project/nearest.ts";
import type { FaceLayout } from "../../setout/facade.ts";
import { careOf } from "../../setout/removal/care.ts";
import { reach, removalOf } from "../../setout/removal/reach.ts";
import { message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import { parseLength } from "../../units/feet-inch.ts";
import { type Answer, isRefusal, type Refusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { type Reached, reachJson } from "../json/reach.ts";
import { openProject } from "../open-project.ts";
import type { Options } from "../options.ts";
import { printReach } from "../print/reach.ts";

export async function command(job: Job): Promise<Answer> {
  const asked = askedIn(job.options);
  if (isRefusal(asked)) return asked;
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  job.progress(message("cli.doing.design"));
  const designed = design(project);
  const reached = asked.kind === "piece" ? toPiece(designed, asked) : toPlace(designed, asked, reader);
  if (isRefusal(reached)) return reached;
  const care = careOf(designed.facade, reached.way, designed.demands);
  const facts = { reached, care, project, demands: designed.demands };
  return { exit: 0, json: reachJson(facts, reader), text: printReach(facts, reader) };
}

type Asked =
  | { readonly kind: "piece"; readonly mark: string }
  | {
      readonly kind: "place";
      readonly face: string;
      readonly at: string;
      readonly depth: "membrane" | "batten";
    };

/** A piece, or a place: one of the two, and whole. */
function askedIn({ mark, face, at, depth }: Options): Asked | Refusal {
  const hint = message("cli.hint.reach");
  const ofPlace = Object.entries({ face, at, depth }).flatMap(([name, value]) =>
    value === undefined ? [] : [`--${name}`],
  );
  if (mark !== undefined) {
    return ofPlace.length === 0
      ? { kind: "piece", mark }
      : {
          refused: message("cli.refused.reach-both", { options: ofPlace }),
          hint,
        };
  }
  if (ofPlace.length === 0) return { refused: message("cli.refused.reach-nothing"), hint };
  if (face === undefined || at === undefined) {
    const missing = [...(face === undefined ? ["--face"] : []), ...(at === undefined ? ["--at"] : [])];
    return { refused: message("cli.refused.reach-half", { given: ofPlace, missing }), hint };
  }
  return { kind: "place", face, at, depth: depth ?? "membrane" };
}

function toPiece({ facade }: Design, { mark }: Extract<Asked, { kind: "piece" }>): Reached | Refusal {
  const face = facade.faces.find(({ pieces }) => pieces.some((piece) => piece.mark === mark));
  const way = removalOf(facade, mark);
  if (face && way) return { face: face.id, goal: { kind: "piece", mark }, way };
  const marks = facade.faces.flatMap(({ pieces }) => pieces.map((piece) => piece.mark));
  const near = nearest(mark, marks);
  return {
    refused: message("cli.refused.no-mark", { mark }),
    hint: near === undefined ? message("cli.hint.marks") : message("cli.hint.meant", { near }),
  };
}

function toPlace(
  { facade }: Design,
  { face: id, at: text, depth }: Extract<Asked, { kind: "place" }>,
  reader: Reader,
): Reached | Refusal {
  const face = facade.faces.find((one) => one.id === id);
  if (face === undefined) {
    const faces = facade.faces.map((one) => one.id);
    const near = nearest(id, faces);
    return {
      refused: message("cli.refused.no-face", { face: id }),
      hint: near ? message("cli.hint.meant", { near }) : message("cli.hint.faces", { faces }),
    };
  }
  const at = pointIn(text, reader);
  if (at === undefined) {
    return { refused: message("cli.refused.not-a-point", { text }), hint: message("cli.hint.point") };
  }
  const way = reach(facade, { face: id, point: at, depth });
  return way ? { face: id, goal: { kind: "place", at, depth }, way } : offWall(face, at);
}

/** Two lengths in the reader's units, parted by a semicolon, or by a comma where there is one alone. */
function pointIn(text: string, { units }: Reader): Point | undefined {
  const parts = text.split(text.includes(";") ? ";" : ",");
  const [x, y] = parts.map((part) => parseLength(part, units === "mm" ? "mm" : "in"));
  return parts.length === 2 && x?.ok && y?.ok ? [x.value, y.value] : undefined;
}

function offWall({ id, openings, zones }: FaceLayout, [x, y]: Point): Refusal {
  const boxes = zones.map(({ region }) => polygonBounds(region));
  const hint = message("cli.hint.wall", {
    face: id,
    left: Math.min(...boxes.map((box) => box.x[0])),
    right: Math.max(...boxes.map((box) => box.x[1])),
    low: Math.min(...boxes.map((box) => box.y[0])),
    high: Math.max(...boxes.map((box) => box.y[1])),
  });
  const opening = openings.find(
    ({ region }) => x >= region.x[0] && x <= region.x[1] && y >= region.y[0] && y <= region.y[1],
  );
  return opening
    ? { refused: message("cli.refused.in-opening", { x, y, face: id, opening: opening.id }), hint }
    : { refused: message("cli.refused.off-wall", { x, y, face: id }), hint };
}
