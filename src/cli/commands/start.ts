/** `outerleaf start`, which is what `npm start` runs: designs, writes the documents, sums up, and serves the page. */
import { join, relative } from "node:path";
import { MANIFEST, type Manifest } from "../../output/issue/manifest.ts";
import { findingJson } from "../../output/json/finding.ts";
import { printJson } from "../../output/json/print.ts";
import { unsettled } from "../../output/report/findings.ts";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { documentsFolder } from "../documents-folder.ts";
import { issue } from "../issue/documents.ts";
import { type Worked, workThrough } from "../issue/work.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import { summary } from "../print/summary.ts";
import { servePage } from "../serving.ts";
import type { StartJson } from "../shapes/start.ts";

const DEMONSTRATION = "examples/atelier-bouleau.outerleaf.json";

export async function command(job: Job): Promise<Answer> {
  const { io, options } = job;
  const file = job.words[0] ?? relative(io.cwd, join(io.root, DEMONSTRATION));
  const opened = await openProject(job, file);
  if (isRefusal(opened)) return opened;
  const { reader } = opened;
  const folder = options.to ?? documentsFolder(file);
  const worked = workThrough(job, opened);
  const manifest = await issue(job, worked, folder);
  if (isRefusal(manifest)) return manifest;
  const json = (): StartJson => ({
    ...told(worked, manifest),
    file,
    folder,
    manifest: join(folder, MANIFEST),
  });
  const text = [
    summary({ ...worked, project: opened.project, facade: worked.design.facade }, reader),
    "",
    say(
      message("cli.start.documents", {
        count: manifest.documents.length,
        folder,
        first: join(folder, manifest.documents[0]?.name ?? ""),
      }),
      reader,
    ),
    say(message("cli.caution"), reader),
    "",
  ].join("\n");
  if (options.once) return { exit: 0, json: options.json ? json() : undefined, text };
  const page = await servePage(job, { file, documents: folder, reader });
  if (isRefusal(page)) return page;
  job.clear();
  if (options.json) io.out(printJson({ ...json(), address: page.url } satisfies StartJson));
  else
    io.out(text + [...page.says, message("cli.serve.stop")].map((one) => `${say(one, reader)}\n`).join(""));
  await page.untilStopped;
  io.err(`${say(message("cli.serve.stopped"), reader)}\n`);
  return { ended: 0 };
}

function told(
  { opened, design, findings }: Worked,
  manifest: Manifest,
): Omit<StartJson, "file" | "folder" | "manifest"> {
  const { project, reader } = opened;
  const pieces = design.facade.faces.flatMap((face) => face.pieces);
  const count = (kind: string): number => pieces.filter((piece) => piece.kind === kind).length;
  return {
    schemaVersion: 1,
    documents: [...manifest.documents],
    counts: {
      sheets: count("sheet"),
      boards: count("board"),
      battens: count("batten"),
      screws: pieces.reduce((sum, { fixings }) => sum + fixings.length, 0),
    },
    findings: unsettled(findings).map((finding) =>
      findingJson(finding, { reader, waivers: project.waivers }),
    ),
  };
}
