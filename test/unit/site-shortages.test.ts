/** What is missing on site, fed back to the saw. It follows from the plan that was sawn by; no outside source. */
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { design } from "../../src/design.ts";
import { applyPatch } from "../../src/project/edit.ts";
import { spoilAll } from "../../src/project/editing/spoiled.ts";
import { readDocument } from "../../src/project/read.ts";
import { foldJournal } from "../../src/site/journal/fold.ts";
import { shortagesOf } from "../../src/site/progress/shortages.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { told } from "../helpers/journal.ts";

const { project, cut } = example("porch");
const { plan } = cut;
if (!plan) throw new Error("the porch is not cut");
const sheets = plan.sheets.flatMap(({ result }) => result.plan.sheets);
const shared =
  sheets.find(({ placements }) => placements.length > 1)?.placements.map(({ demandId }) => demandId) ?? [];
const short = (count: number, piece: string) =>
  told(count, { kind: "short", place: { piece }, body: { why: "broken" } });

describe("pieces that are short on site", () => {
  it("spoil the stock that bore nothing else that is there, and are cut singly otherwise", () => {
    expect(shared.length).toBeGreaterThan(1);
    const [first = "", ...rest] = shared;
    const alone = foldJournal([
      short(1, first),
      ...rest.map((piece, i) => told(i + 2, { place: { piece } })),
    ]);
    expect(shortagesOf(plan, alone)).toEqual({ spoiled: [], again: [first] });
    const whole = foldJournal(shared.map((piece, i) => short(i + 1, piece)));
    const { spoiled, again } = shortagesOf(plan, whole);
    expect(again).toEqual([]);
    expect(spoiled).toMatchObject([{ kind: "sheet", pieces: shared }]);
  });

  it("are planned anew once the file tells what is spoiled", () => {
    const { spoiled } = shortagesOf(plan, foldJournal(shared.map((piece, i) => short(i + 1, piece))));
    const patched = applyPatch(project, spoilAll(project, spoiled)?.operations ?? "none");
    const read = patched.ok ? readDocument(patched.document, "porch") : undefined;
    if (!read?.ok) throw new Error("the change does not fit");
    expect(read.project.cutting?.spoiled).toEqual(spoiled);
    const next = cutFacade(read.project, design(read.project).facade).plan;
    const marks = next?.sheets.flatMap(({ result }) =>
      result.plan.sheets.flatMap(({ placements }) => placements.map(({ demandId }) => demandId)),
    );
    for (const mark of shared) expect(marks).toContain(mark);
    expect(spoilAll(read.project, [])).toBeUndefined();
  });
});
