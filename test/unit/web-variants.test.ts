/** The figures by which variants are weighed are those of the design, and what is open in one alone is told. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Design, designFile } from "../../src/design.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { figuresOf, settledApart } from "../../src/web/variants/figures.ts";

interface Editable {
  readonly claddings: { gapBand?: number[] }[];
}

function designOf(edit: (document: Editable) => void = () => {}): Design {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  edit(document);
  const made = designFile({ name: "demo", document });
  if (made.kind !== "designed") throw new Error("the demo reads");
  return made.design;
}

const demo = designOf();
const said = (design: Design): Record<string, string | undefined> =>
  Object.fromEntries(
    figuresOf({ design, findings: design.findings, takeoff: undefined }).map(({ label, value }) => [
      say(label, ENGLISH_MM),
      value && say(value, ENGLISH_MM),
    ]),
  );

describe("variants", () => {
  it("are weighed by the figures of their design", () => {
    const pieces = demo.facade.faces.flatMap((face) => face.pieces);
    const doses = demo.findings.filter(({ code }) => code === "P021").map(({ demand }) => demand ?? 0);
    const figures = said(demo);
    expect(figures.sheets).toBe(String(pieces.filter(({ kind }) => kind === "sheet").length));
    expect(figures.fail).toBe(String(demo.findings.filter(({ outcome }) => outcome === "fail").length));
    expect(figures["ultraviolet a year"]).toMatch(new RegExp(`^${Math.max(...doses).toFixed(1)} `));
    expect(figures.order).toBeUndefined();
  });

  it("tell what one has to settle that the other has not", () => {
    const other = designOf(({ claddings: [boards] }) => Object.assign(boards ?? {}, { gapBand: [9, 9.2] }));
    const { only, gone } = settledApart(other.findings, demo.findings);
    expect(only.map(({ code }) => code)).toContain("S001");
    expect(settledApart(demo.findings, other.findings)).toEqual({ only: gone, gone: only });
    expect(settledApart(demo.findings, demo.findings)).toEqual({ only: [], gone: [] });
  });
});
