/** Writes every document of an issue into a folder. */
import { basename } from "node:path";
import type { Manifest } from "../../output/issue/manifest.ts";
import { writeIssue } from "../../output/issue/write-issue.ts";
import { message } from "../../text/message.ts";
import type { Refusal } from "../answer.ts";
import type { Job } from "../job.ts";
import { readPdfFonts } from "../pdf-fonts.ts";
import { sha256 } from "../sums.ts";
import { VERSION } from "../version.ts";
import { writeFolder } from "../write-folder.ts";
import type { Worked } from "./work.ts";

/** Makes the documents and writes them into the folder, all or none. */
export async function issue(job: Job, worked: Worked, folder: string): Promise<Manifest | Refusal> {
  const { opened } = worked;
  job.progress(message("cli.doing.draw"));
  const { project, reader, file, edit, document, recorded } = opened;
  const fonts = await readPdfFonts();
  return writeFolder(
    {
      folder,
      write: (shelf) =>
        writeIssue(
          { ...worked, reader, file: recorded ? { name: basename(file.name), document } : undefined },
          shelf,
          {
            fonts,
            sheetDone: (number, of) => job.progress(message("cli.doing.sheet", { number, of })),
            drawingsDone: () => job.progress(message("cli.doing.write")),
          },
        ),
      head: {
        version: VERSION,
        project: project.title,
        revision: project.revision ?? "",
        language: reader.language,
        units: reader.units,
        input: { name: basename(file.name), sha256: sha256(file.bytes) },
        ...(edit && { edit: { name: basename(edit.name), sha256: sha256(edit.bytes) } }),
      },
    },
    job.io,
  );
}
