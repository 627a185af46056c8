/** Large documents are handed out while they are made: what is written before is not held until the end. */
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { zipped } from "../../src/output/archive.ts";
import { labelPages } from "../../src/output/drawings/labels.ts";
import { ifcPieces } from "../../src/output/ifc/ifc.ts";
import { collected, jsonPieces, printJson } from "../../src/output/json/print.ts";
import { takeoffListed } from "../../src/output/json/takeoff.ts";
import { type PdfPage, streamPdf } from "../../src/output/pdf/pdf.ts";
import { gathered, mapped, type Piece } from "../../src/output/pieces.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { ENGLISH_MM as reader } from "../../src/text/say.ts";
import { example } from "../contract/cut-facade-examples.ts";
import { PDF_FONTS } from "../helpers/pdf-fonts.ts";

const { project, facade, cut } = example("porch");
const takeoff = takeOff(project, facade, cut.plan);
const labels = labelPages({
  design: { project, facade, demands: [] as never },
  findings: [],
  reader,
  takeoff,
});

describe("a PDF", () => {
  it("has handed out a page before the one after next is drawn", async () => {
    let taken = 0;
    const before: number[] = [];
    function* asked(): Generator<PdfPage> {
      for (const page of labels.pages()) {
        before.push(taken);
        yield page;
      }
    }
    await streamPdf(asked(), {
      title: "labels",
      reader,
      fonts: PDF_FONTS,
      take: (chunk) => {
        taken += chunk.length;
      },
    });
    expect(before.length).toBe(labels.count);
    expect(before.length).toBeGreaterThan(3);
    // A page is closed when the next begins: from the third on, each finds one more written.
    const grown = before.slice(2).map((bytes, i) => bytes - (before[i + 1] ?? 0));
    expect(Math.min(...grown)).toBeGreaterThan(1000);
    expect(taken).toBeGreaterThan(before.at(-1) ?? 0);
  });
});

describe("JSON", () => {
  it("is the same text in pieces as at once", () => {
    const listed = takeoffListed({ project, takeoff, findings: [] }, reader);
    const pieces = [...jsonPieces(listed)];
    expect(pieces.length).toBeGreaterThan(takeoff.pieces.length);
    expect(pieces.join("")).toBe(printJson(collected(listed)));
    for (const odd of [
      {},
      { a: [] },
      { a: undefined, b: ["x\ny", { c: [1, {}] }] },
      { a: [[], [[2]]], b: null },
    ]) {
      expect([...jsonPieces(odd)].join("")).toBe(printJson(odd));
    }
  });

  it("makes the members of its lists one by one", () => {
    let made = 0;
    const list = mapped([1, 2, 3], (one) => {
      made += 1;
      return one;
    });
    for (const piece of jsonPieces({ list })) if (piece.includes("1")) expect(made).toBe(1);
    expect(made).toBe(3);
  });
});

it("the model is handed out face by face", () => {
  const pieces = [...ifcPieces({ project, facade })];
  expect(pieces[0]).toMatch(/^ISO-10303-21;/);
  expect(pieces.length).toBeGreaterThan(facade.faces.reduce((sum, face) => sum + face.pieces.length, 0));
});

it("an archive is handed out while its files are made", () => {
  const size = 1 << 20;
  let made = 0;
  // No run of it is like another: it packs badly.
  const noise = Uint8Array.from({ length: size }, (_, i) => (Math.imul(i, 2654435761) >>> 13) & 0xff);
  function* pieces(): Generator<Piece> {
    for (made = 0; made < 8; made++) yield noise;
  }
  const at: number[] = [];
  const chunks: Uint8Array[] = [];
  for (const chunk of zipped([{ name: "noise", pieces: pieces() }])) {
    at.push(made);
    chunks.push(chunk);
  }
  expect(at.some((count) => count < 4)).toBe(true);
  const file = unzipSync(Buffer.concat(chunks)).noise;
  expect(file?.length).toBe(8 * size);
});

it("small pieces are gathered, text and bytes apart and in their order", () => {
  const bytes = (...all: number[]): Uint8Array => new Uint8Array(all);
  const long = "x".repeat(70_000);
  expect([...gathered(["a", "b", bytes(1), bytes(2, 3), "c", long, "d", ""])]).toEqual([
    "ab",
    bytes(1, 2, 3),
    `c${long}`,
    "d",
  ]);
});
