/** A DXF drawing taken in: as a face of a project, or as the wall that a project begins with. */
import { basename } from "node:path";
import { chosenOf } from "../../project/intake/dxf/chosen.ts";
import { readDrawing } from "../../project/intake/dxf/read-drawing.ts";
import { faceOfLayer } from "../../project/intake/face/face-of-layer.ts";
import { replaceFace } from "../../project/intake/face/replace-face.ts";
import { startFace } from "../../project/intake/face/start-face.ts";
import { type Taken, tried } from "../../project/intake/taken.ts";
import { message } from "../../text/message.ts";
import type { Refusal } from "../answer.ts";
import type { FileText } from "../files.ts";
import type { Job } from "../job.ts";
import type { OpenedProject } from "../open-project.ts";
import { drawingText } from "./drawing-text.ts";

export function takeDrawing(job: Job, file: FileText, into: OpenedProject | undefined): Taken | Refusal {
  const { options, reader } = job;
  const name = basename(file.name);
  const read = readDrawing(drawingText(file.bytes), name);
  if (!read.ok) return read;
  const chosen = chosenOf(read.drawing, {
    ...(options.layer !== undefined && { layer: options.layer }),
    ...(options.drawn && { unit: options.drawn }),
  });
  if (!chosen.ok) return chosen;
  const taken = faceOfLayer(read.drawing, chosen.choice);
  if (!taken.ok) return taken;
  if (!into) {
    const display = { units: options.units ?? "mm", language: reader.language } as const;
    const started = startFace(taken.face, { title: name, display, file: name });
    return started.ok ? { ...started, findings: taken.findings } : started;
  }
  if (options.face === undefined) {
    return {
      refused: message("cli.refused.face-needed"),
      hint: message("cli.hint.faces", { faces: into.project.faces.map(({ id }) => id) }),
    };
  }
  const replaced = replaceFace(into, { id: options.face, taken: taken.face, file: name });
  if (!replaced.ok) return replaced;
  return tried(
    { document: into.document, name: basename(into.file.name) },
    { ...replaced, findings: taken.findings },
  );
}
