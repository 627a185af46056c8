/** Which crew works on a face. */
import { message } from "../../text/message.ts";
import type { Crews } from "../schema/crews.ts";
import type { Change, Source } from "./change.ts";

/** The crew that all the work of a face is given to; undefined where none is, or it is parted. */
export function crewOfFace(crews: Crews | undefined, face: string): string | undefined {
  const own = (crews ?? []).filter(({ work }) => work.some((one) => one.face === face));
  const [first] = own;
  const isParted =
    own.length > 1 || first?.work.some((one) => one.face === face && (one.steps ?? one.lifts) !== undefined);
  return isParted ? undefined : first?.name;
}

/**
 * Gives all the work of a face to a crew, a new one where none bears the name; a crew without work goes.
 * @param name empty for no crew
 */
export function giveFace({ project }: Source, face: string, name: string): Change {
  const wanted = name.trim();
  const before: Crews = project.crews ?? [];
  const others = before.map((crew) => ({ ...crew, work: crew.work.filter((one) => one.face !== face) }));
  const isKnown = others.some((crew) => crew.name === wanted);
  const given = isKnown
    ? others.map((crew) => (crew.name === wanted ? { ...crew, work: [...crew.work, { face }] } : crew))
    : [...others, ...(wanted === "" ? [] : [{ name: wanted, work: [{ face }] }])];
  const value = given.filter(({ work }) => work.length > 0);
  return {
    operations:
      value.length > 0 || project.crews === undefined
        ? [{ op: "add", path: "/crews", value }]
        : [{ op: "remove", path: "/crews" }],
    says: message("project.edit.crew", { face }),
  };
}
