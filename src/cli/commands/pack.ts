/** `outerleaf pack`: the planes that a surveyed wall's battens can be packed to, and the packing at each crossing. */
import { design } from "../../design.ts";
import { countLine, printFindings } from "../../output/report/findings.ts";
import { READING_COLUMNS } from "../../project/intake/readings/columns.ts";
import { readReadings } from "../../project/intake/readings/read-readings.ts";
import { mapColumns } from "../../project/intake/table/columns.ts";
import { nearest } from "../../project/nearest.ts";
import type { Project } from "../../project/schema/project.ts";
import { foldJournal } from "../../site/journal/fold.ts";
import { leanOf, surveyFindings } from "../../site/survey/findings.ts";
import { joinedPlanes } from "../../site/survey/joined.ts";
import { surveyFace, usualPacking } from "../../site/survey/packing.ts";
import { type Reading, readingsOf, readingsTold, repeatError } from "../../site/survey/reading.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal, type Refusal } from "../answer.ts";
import { exitOf } from "../exit.ts";
import { readText } from "../files.ts";
import type { Job } from "../job.ts";
import { readJournal } from "../journal-file.ts";
import { packJson } from "../json/pack.ts";
import { openProject } from "../open-project.ts";
import { printCorners, printPack } from "../print/pack.ts";
import { readTable } from "../take-in/table.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  const ids = project.faces.map(({ id }) => id);
  const { face: asked } = job.options;
  if (asked !== undefined && !ids.includes(asked)) {
    const near = nearest(asked, ids);
    return {
      refused: message("cli.refused.no-face", { face: asked }),
      hint: near ? message("cli.hint.meant", { near }) : message("cli.hint.faces", { faces: ids }),
    };
  }
  const readings = await readingsFor(job, project);
  if (isRefusal(readings)) return readings;
  const wanted = asked === undefined ? ids.filter((id) => readings.some(({ face }) => face === id)) : [asked];
  if (wanted.length === 0) {
    return { refused: message("cli.refused.no-readings"), hint: message("cli.hint.readings") };
  }
  job.progress(message("cli.doing.pack"));
  const { facade } = design(project);
  const lean = leanOf(project);
  const { planes, corners } = joinedPlanes({ facade, project }, { readings, lean });
  const faces = wanted.map((face) =>
    surveyFace({ facade, project }, { face, readings, lean, joined: planes.get(face) }),
  );
  const findings = faces.flatMap((surveyed) =>
    surveyFindings({ facade, project, surveyed, readings }, usualPacking(surveyed.packings)),
  );
  const { waivers } = project;
  return {
    exit: exitOf(findings, waivers),
    json: packJson(
      { faces, corners, lean, project, error: repeatError(readings), findings, waivers },
      reader,
    ),
    text: [
      say(message("cli.pack.title", { title: project.title, lean: lean.mmPerM }), reader),
      "",
      ...faces.map((one) => printPack(one, project, reader)),
      ...(corners.length > 0 ? [printCorners(corners, reader), ""] : []),
      printFindings(findings, { reader, waivers }) + countLine(findings, { reader, waivers }),
      say(message("cli.caution"), reader),
      "",
    ].join("\n"),
  };
}

/** Of the table that is named, or else of the file; with those of the journal where one is named. */
async function readingsFor(job: Job, project: Project): Promise<readonly Reading[] | Refusal> {
  const { journal } = job.options;
  const entries = journal === undefined ? [] : await readJournal(journal, job.io.cwd);
  if (isRefusal(entries)) return entries;
  const written = await writtenReadings(job, project);
  return isRefusal(written) ? written : [...written, ...readingsTold(foldJournal(entries))];
}

async function writtenReadings(job: Job, project: Project): Promise<readonly Reading[] | Refusal> {
  const name = job.options.readings;
  if (name === undefined) return readingsOf(project);
  const file = await readText(name, job.io.cwd);
  if (isRefusal(file)) return file;
  const found = await readTable(file);
  const read = found.ok
    ? readReadings(found.table, {
        mapping: mapColumns(found.table, READING_COLUMNS),
        faces: project.faces,
      })
    : found;
  if (read.ok) return read.readings;
  const faults = read.findings.length;
  return { refused: message("cli.refused.take-in", { file: name, faults }), findings: read.findings };
}
