/** Which walls of a model are meant: what the reader names, or those that stand outside; and which of them are seen from their other side. */
import { type Finding, finding } from "../../../findings/finding.ts";
import { message } from "../../../text/message.ts";
import type { ModelWall, WallModel } from "./model.ts";

export type ChosenWalls =
  | { readonly ok: true; readonly walls: readonly ModelWall[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** More names than this are not told. */
const MOST_TOLD = 40;

/** @param said names, tags, global ids or entities (`#12`); the outer walls where none is said */
export function chosenWalls(model: WallModel, said: readonly string[] | undefined): ChosenWalls {
  const { walls, name: file } = model;
  if (!said) {
    const outer = walls.filter((wall) => wall.outer);
    return outer.length > 0
      ? { ok: true, walls: outer }
      : { ok: false, findings: [unknown(message("intake.ifc.no-outer", { file }), walls)] };
  }
  return named(model, said);
}

/**
 * @param said names as of `chosenWalls`
 * @param among the walls that are taken: none but these can be turned
 */
export function turnedWalls(
  model: WallModel,
  said: readonly string[],
  among: readonly ModelWall[],
): ChosenWalls {
  const found = named(model, said);
  if (!found.ok) return found;
  const findings = found.walls
    .filter((wall) => !among.includes(wall))
    .map(({ name: wall }) => unknown(message("intake.ifc.not-taken", { file: model.name, wall }), among));
  return findings.length > 0 ? { ok: false, findings } : found;
}

function named({ walls, name: file }: WallModel, said: readonly string[]): ChosenWalls {
  const found = said.map((one) => ({
    one,
    walls: walls.filter(({ name, entity, called }) => [name, entity, ...called].includes(one)),
  }));
  const findings = found.flatMap(({ one, walls: of }) =>
    of.length === 1
      ? []
      : [
          unknown(
            message(of.length === 0 ? "intake.ifc.no-wall" : "intake.ifc.many-walls", { file, wall: one }),
            of.length === 0 ? walls : of,
          ),
        ],
  );
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, walls: walls.filter((wall) => found.some(({ walls: of }) => of[0] === wall)) };
}

function unknown(says: Finding["says"], walls: readonly ModelWall[]): Finding {
  const names = walls.slice(0, MOST_TOLD).map(({ name }) => name);
  const hint = message("intake.hint.ifc.walls", { walls: names });
  return finding({ code: "F034", outcome: "fail", where: {}, says, hint });
}
