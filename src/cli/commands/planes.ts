/** `outerleaf planes`: the battens, packers and boards of the stock that bring neighbouring faces into one plane. */
import { demandsOf } from "../../codes/demands.ts";
import { nearest } from "../../project/nearest.ts";
import type { Project } from "../../project/schema/project.ts";
import { planeGroups, searchPlanes } from "../../setout/plane-search/index.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal, type Refusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { planesJson } from "../json/planes.ts";
import { openProject } from "../open-project.ts";
import { printPlanes } from "../print/planes.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  const groups = groupsOf(project, job.options.face);
  if (isRefusal(groups)) return groups;
  job.progress(message("cli.doing.planes"));
  const demands = demandsOf(project);
  const { planing = 0 } = job.options;
  const searches = groups.map((zones) =>
    searchPlanes({ project, demands, zones, planing: { most: planing, step: 1 } }),
  );
  return {
    exit: searches.every(({ counts }) => counts.passing > 0) ? 0 : 1,
    json: planesJson(searches, reader),
    text: [
      say(message("cli.planes.title", { title: project.title }), reader),
      "",
      ...(searches.length === 0 ? [say(message("cli.planes.no-meeting"), reader), ""] : []),
      ...searches.map((search) => printPlanes(search, reader)),
      say(message("cli.caution"), reader),
      "",
    ].join("\n"),
  };
}

type Groups = ReturnType<typeof planeGroups>;

/** Groups of zones that meet; of one face alone those it takes part in, or its own zones where it meets nothing. */
function groupsOf(project: Project, id: string | undefined): Groups | Refusal {
  const groups = planeGroups(project);
  if (id === undefined) return groups;
  const face = project.faces.find((one) => one.id === id);
  if (!face) {
    const ids = project.faces.map((one) => one.id);
    const near = nearest(id, ids);
    return {
      refused: message("cli.refused.no-face", { face: id }),
      hint: near ? message("cli.hint.meant", { near }) : message("cli.hint.faces", { faces: ids }),
    };
  }
  const own = groups.filter((group) => group.some((ref) => ref.face === id));
  return own.length > 0 ? own : [face.zones.map(({ id: zone }) => ({ face: id, zone }))];
}
