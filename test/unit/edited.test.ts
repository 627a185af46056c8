/** Edits that were made to an older document than the newest lose nothing of what has come since. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { setMeasured } from "../../src/project/editing/as-built.ts";
import type { Source } from "../../src/project/editing/change.ts";
import { setPackingWork } from "../../src/project/editing/packing-work.ts";
import { readDocument } from "../../src/project/read.ts";
import { edited } from "../../src/web/sheet/edited.ts";

function source(): Source {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  delete document.packingWork;
  delete document.asBuilt;
  const read = readDocument(document, "edited");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return { project: read.project, document };
}

/** The document after each edit in turn, all of them made to the first one. */
function together(from: Source, edits: readonly Parameters<typeof edited>[0][]): Record<string, unknown> {
  let now = from.document;
  for (const edit of edits) {
    const made = edited({ ...edit, made: from.document }, now);
    if (!made.ok) throw new Error(JSON.stringify(made.findings));
    now = made.document;
  }
  return now as Record<string, unknown>;
}

describe("an edit made to an older document", () => {
  it("keeps a group that another one has begun since", () => {
    const from = source();
    const edits = [
      setPackingWork(from, { key: "minutesPerPacker", name: "minutes-packer" }, 2),
      setPackingWork(from, { key: "pricePerPacker", name: "price-packer" }, 2.5),
    ];
    expect(together(from, edits).packingWork).toEqual({ minutesPerPacker: 2, pricePerPacker: 2.5 });
  });

  it("keeps what was measured of another opening of the same face", () => {
    const from = source();
    const edits = ["W2", "D1"].map(
      (opening, i) => setMeasured(from, { face: "front", opening }, { left: 700 + i }) ?? { operations: [] },
    );
    expect(together(from, edits).asBuilt).toEqual({
      openings: expect.arrayContaining([
        { face: "front", opening: "W2", left: 700 },
        { face: "front", opening: "D1", left: 701 },
      ]),
    });
  });

  it("has the last word where both say the same thing", () => {
    const from = source();
    const edits = [1, 3].map((value) =>
      setPackingWork(from, { key: "minutesPerPacker", name: "minutes-packer" }, value),
    );
    expect(together(from, edits).packingWork).toEqual({ minutesPerPacker: 3 });
  });
});
