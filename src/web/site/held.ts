/** The design that the site pages show: the kept project's latest revision, else the served file; held for when there is no network. */
import type { Design } from "../../design.ts";
import { fetchDesign } from "../work/api.ts";
import type { Designer } from "../work/designer.ts";
import { hashOf } from "../work/hash.ts";
import { fetchKept, fetchProject } from "../work/kept-api.ts";
import { answerOf, transact } from "./queue/database.ts";

export interface HeldDesign {
  /** Id under which the project's edits and its journal are kept. */
  readonly project: string;
  /** Number of the kept revision; absent where the file itself is shown. */
  readonly revision?: number;
  readonly design: Design;
}

const SHOWN = "shown";

/** What was held at the last visit. */
export async function heldDesign(): Promise<HeldDesign | undefined> {
  try {
    return await transact(
      ["held"],
      "readonly",
      (within) => answerOf(within.objectStore("held").get(SHOWN)) as Promise<HeldDesign | undefined>,
    );
  } catch {
    return undefined;
  }
}

/** As the server has it now, held from now on; undefined where it cannot be reached or has no design. */
export async function freshDesign(designer: () => Designer): Promise<HeldDesign | undefined> {
  const served = await fetchDesign();
  if (served?.kind !== "designed" || served.keptAs === undefined) return undefined;
  const held = await latestOf(served.keptAs, { served, designer });
  await transact(["held"], "readwrite", async (within) => {
    within.objectStore("held").put(held, SHOWN);
  }).catch(() => undefined);
  return held;
}

async function latestOf(
  project: string,
  {
    served,
    designer,
  }: { served: { name: string; document: unknown; design: Design }; designer: () => Designer },
): Promise<HeldDesign> {
  const file = { project, design: served.design };
  const hash = await hashOf(served.document);
  const isKept = (await fetchKept())?.projects.some(({ id }) => id === project) ?? false;
  const kept = isKept ? await fetchProject(project, hash) : undefined;
  // A file that was changed elsewhere since goes before what was edited, as on the workbench.
  if (!kept?.knowsFile) return file;
  const { number, document, hash: latest } = kept.revision;
  if (latest === hash) return { ...file, revision: number };
  const answer = await designer().design({ name: kept.name, document });
  return answer.kind === "designed" ? { project, revision: number, design: answer.design } : file;
}
