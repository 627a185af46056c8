/** Which face something new is drawn on, where no press tells. */
import type { Design } from "../../../design.ts";

/** The first of some faces that the file itself has: a soffit follows its recess. */
export function faceToDrawOn({ project }: Design, wished: readonly (string | undefined)[]): string {
  const own = project.faces.map(({ id }) => id);
  return wished.find((id) => id !== undefined && own.includes(id)) ?? own[0] ?? "";
}
