/** Walls of an IFC model taken in: as the faces that a project begins with, or into faces that it has. */
import { basename } from "node:path";
import { readWalls } from "../../project/intake/ifc/read-walls.ts";
import { startWithWalls, wallsInto } from "../../project/intake/ifc/take-walls.ts";
import type { Taken } from "../../project/intake/taken.ts";
import type { FileText } from "../files.ts";
import type { Job } from "../job.ts";
import type { OpenedProject } from "../open-project.ts";
import { drawingText } from "./drawing-text.ts";

export function takeModel({ options, reader }: Job, file: FileText, into: OpenedProject | undefined): Taken {
  const name = basename(file.name);
  const read = readWalls(drawingText(file.bytes), name);
  if (!read.ok) return read;
  const walls = options.walls
    ?.split(",")
    .map((one) => one.trim())
    .filter((one) => one !== "");
  const choice = { ...(walls && { walls }), ...(options.turned && { turned: options.turned }) };
  if (into)
    return wallsInto(into, read.model, {
      ...choice,
      ...(options.face !== undefined && { face: options.face }),
    });
  const display = { units: options.units ?? "mm", language: reader.language } as const;
  return startWithWalls(read.model, choice, { title: name.replace(/\.ifc$/i, ""), display });
}
