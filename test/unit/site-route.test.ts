/** Addresses of the site pages: what a label's code says leads to its piece. */
import { describe, expect, it } from "vitest";
import { labelCode } from "../../src/output/drawings/labels.ts";
import { mark as journalMark } from "../../src/site/journal/place.ts";
import { pieceSum } from "../../src/takeoff/issue-state.ts";
import { found } from "../../src/web/site/find/found.ts";
import { neighboursOf } from "../../src/web/site/piece/neighbours.ts";
import { fragmentOf, routeOf, routeOfCode } from "../../src/web/site/route.ts";
import { solidDemo } from "../helpers/solid-demo.ts";

const { facade } = solidDemo;
const pieces = facade.faces.flatMap((face) => face.pieces);

describe("a label's code", () => {
  it.each(["https://192.0.2.7:8443", "https://192.0.2.7:8443/"])(
    "opens every piece with its sum where the workbench is at %s",
    (siteAddress) => {
      for (const piece of pieces) {
        const code = labelCode(piece, { revision: "B 2", siteAddress });
        expect(code.startsWith("https://192.0.2.7:8443/site.html#piece/")).toBe(true);
        expect(routeOfCode(code)).toEqual({ view: "piece", mark: piece.mark, sum: pieceSum(piece) });
        expect(routeOf(new URL(code).hash)).toEqual(routeOfCode(code));
      }
    },
  );

  it("without an address names mark, revision and sum", () => {
    const [piece] = pieces;
    const code = labelCode(piece!, { revision: "A", siteAddress: undefined });
    expect(routeOfCode(code)).toEqual({ view: "piece", mark: piece!.mark, sum: pieceSum(piece!) });
  });

  it.each(["https://192.0.2.7/other", "4006381333931", "", "#hold/front/H1", "https://192.0.2.7/#piece/<b>"])(
    "that is none of ours, %s, leads nowhere",
    (code) => expect(routeOfCode(code)).toBeUndefined(),
  );
});

it.each([
  { view: "find" },
  { view: "queue" },
  { view: "hold", face: "north wall/2", point: "H3" },
  { view: "survey", face: "façade" },
] as const)("the address of %o leads back to it", (route) => {
  expect(routeOf(fragmentOf(route))).toEqual(route);
});

it("an address that is none leads to the search", () => {
  for (const fragment of ["", "#", "#piece/", "#piece/%E0%A4%A", "#hold/front", "#nonsense/1"]) {
    expect(routeOf(fragment)).toEqual({ view: "find" });
  }
});

it("every mark is one that the journal takes", () => {
  expect(pieces.filter(({ mark }) => !journalMark.safeParse(mark).success).map(({ mark }) => mark)).toEqual(
    [],
  );
});

it("a mark is found without its strokes, the very mark first", () => {
  const marks = ["F-S1", "F-S12", "G-FS1", "F-S2"].map((mark) => ({ mark }));
  expect(found(marks, "fs1").map(({ mark }) => mark)).toEqual(["F-S1", "F-S12", "G-FS1"]);
  expect(found(marks, " ")).toEqual([]);
});

it("who is beside a piece has that piece on its other side", () => {
  const face = facade.faces.find((one) => one.pieces.some(({ kind }) => kind === "sheet"))!;
  const back = { left: "right", right: "left", above: "below", below: "above" } as const;
  let pairs = 0;
  for (const piece of face.pieces.filter(({ kind }) => kind === "sheet" || kind === "board")) {
    for (const [side, marks] of Object.entries(neighboursOf(face, piece))) {
      for (const mark of marks) {
        const other = face.pieces.find((one) => one.mark === mark)!;
        expect(neighboursOf(face, other)[back[side as keyof typeof back]]).toContain(piece.mark);
        pairs += 1;
      }
    }
  }
  expect(pairs).toBeGreaterThan(20);
});
