/** Walls taken from IFC texts, and how what is said of them reads. */
import { expect } from "vitest";
import { readWalls } from "../../src/project/intake/ifc/read-walls.ts";
import { startWithWalls, type WallChoice } from "../../src/project/intake/ifc/take-walls.ts";
import { readDocument } from "../../src/project/read.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";

const START = { title: "House", display: { units: "mm", language: "en" } } as const;
export const told = (findings: Parameters<typeof texts>[0]) => texts(findings).join("\n");
function texts(
  findings: readonly { says: Parameters<typeof say>[0]; hint?: Parameters<typeof say>[0] | undefined }[],
) {
  return findings.map(({ says, hint }) => `${say(says, ENGLISH_MM)} ${hint ? say(hint, ENGLISH_MM) : ""}`);
}

export function modelOf(text: string) {
  const read = readWalls(text, "house.ifc");
  if (!read.ok) throw new Error(told(read.findings));
  return read.model;
}

export function begun(text: string, choice: WallChoice = {}) {
  const taken = startWithWalls(modelOf(text), choice, START);
  if (!taken.ok) throw new Error(told(taken.findings));
  const read = readDocument(taken.document, "house");
  if (!read.ok) throw new Error(told(read.findings));
  return { ...taken, project: read.project };
}

export function refusal(text: string, choice: WallChoice = {}): string {
  const read = readWalls(text, "house.ifc");
  const taken = read.ok ? startWithWalls(read.model, choice, START) : read;
  expect(taken.ok).toBe(false);
  return told(taken.findings.filter(({ outcome }) => outcome === "fail"));
}

/** Outline from the foot up, whatever the foot is. */
export function shape({
  outline,
  openings,
}: {
  outline: readonly (readonly number[])[];
  openings: readonly { x: readonly number[]; y: readonly number[] }[];
}) {
  const foot = Math.min(...outline.map(([, y]) => y!));
  return {
    outline: outline.map(([x, y]) => [x, y! - foot]),
    openings: openings.map(({ x, y }) => [x[0], y[0]! - foot, x[1], y[1]! - foot]),
  };
}
