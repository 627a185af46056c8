/** Figures of the reference data that the project gives itself: put in their place, and taken out again. */
import { message } from "../../text/message.ts";
import { pointerOf } from "../pointer.ts";
import type { Project } from "../schema/project.ts";
import type { Change, Source } from "./change.ts";

export type OwnValue = NonNullable<Project["figures"]>[string]["value"];

/** Puts a figure in the catalogue's place, or another in that of the one before; what else was written of it stays. */
export function setFigure(
  { project }: Source,
  key: string,
  { value, unit, source }: { value: OwnValue; unit: string | undefined; source: string },
): Change {
  const figure = { value, ...(unit === undefined ? {} : { unit }), source };
  const { unit: _unit, ...before } = project.figures?.[key] ?? {};
  return {
    operations: [
      project.figures
        ? { op: "add", path: pointerOf(["figures", key]), value: { ...before, ...figure } }
        : { op: "add", path: "/figures", value: { [key]: figure } },
    ],
    says: message("project.edit.figure", { key }),
  };
}

/** The catalogue's figure again; undefined where the project has none of its own. */
export function removeFigure({ project }: Source, key: string): Change | undefined {
  const { figures } = project;
  if (!figures || !Object.hasOwn(figures, key)) return undefined;
  const last = Object.keys(figures).length === 1;
  return {
    operations: [{ op: "remove", path: last ? "/figures" : pointerOf(["figures", key]) }],
    says: message("project.edit.figure-out", { key }),
  };
}
