/** Corner posts: where they stand, what they bear on, and what is said where none can. Common practice throughout. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cutFacade } from "../../src/cutting/facade/cut-facade.ts";
import { design } from "../../src/design.ts";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import { takeOff } from "../../src/takeoff/take-off.ts";
import { facadeProblems } from "../helpers/facade-checks.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

const POST = { stock: "post", material: "eastern-white-pine", screw: "batten-140" };

function withPost(
  example: string,
  { corner, width, thickness, post = {} }: { corner: number; width: number; thickness: number; post?: Loose },
  edit: (document: Loose) => void = () => {},
) {
  const document = JSON.parse(readFileSync(`examples/${example}.outerleaf.json`, "utf8"));
  const { left, right, gap } = document.corners[corner];
  document.stock.battens.push({ id: "post", thickness, width, lengths: [2400, 3600] });
  document.corners[corner] = { left, right, kind: "post", gap, post: { ...POST, ...post } };
  edit(document);
  const read = readDocument(document, example);
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  const { facade } = design(read.project);
  const face = facade.faces.find(({ id }) => id === left);
  const other = facade.faces.find(({ id }) => id === right);
  if (!face || !other) throw new Error("no such corner");
  const posts = face.pieces.filter(({ kind }) => kind === "post");
  return { project: read.project, facade, face, other, posts };
}

const findingsOf = ({ facade }: { facade: ReturnType<typeof design>["facade"] }, code: string) =>
  facade.findings.filter((one) => one.code === code);

describe("a post at an insulated corner of sheets", () => {
  // South and east of the L plan: 60 insulation, 38 batten, 1 gasket, 8 sheet; both walls stand 107 out.
  const laid = withPost("l-plan", { corner: 0, width: 90, thickness: 20 });
  const { posts, face, other, facade, project } = laid;

  it("stands on the battens, and as far out of either plane", () => {
    expect(posts.map(({ z }) => z)).toEqual(posts.map(() => [99, 119]));
    // 20 on the batten's gasket less the sheet's 8: 12 proud of 107 either way.
    for (const { outline } of posts) expect(polygonBounds(outline).x).toEqual([9000 + 119 - 90, 9000 + 119]);
  });

  it("lets both claddings stop short of it by the gap", () => {
    const end = Math.max(...face.zones.map(({ region }) => polygonBounds(region).x[1]));
    expect(9029 - end).toBe(8);
    // East's own x runs into the building from the corner: the post's back lies at -99.
    const start = Math.min(...other.zones.map(({ region }) => polygonBounds(region).x[0]));
    expect(start + 99).toBe(8);
  });

  it("is screwed to a batten on backing in the neighbour's insulation", () => {
    const batten = face.pieces.find(({ mark }) => mark === posts[0]?.supports[0]);
    expect(polygonBounds(batten?.outline ?? []).x).toEqual([9000, 9060]);
    const held = face.pieces.filter(({ kind }) => kind === "backing").map(({ mark }) => mark);
    expect(held).toEqual(expect.arrayContaining([...(batten?.supports ?? ["no batten"])]));
    expect(posts.every(({ fixings }) => fixings.length >= 2)).toBe(true);
    expect(posts[0]?.fixings[0]?.through).toEqual([
      { what: "post", thickness: 20 },
      { what: "gasket", thickness: 1 },
    ]);
  });

  it("takes the height of the wall, in lengths that the stock has", () => {
    const lengths = posts.map(({ cut }) => cut.length);
    // Between its ends at -60 and 2700.
    expect(lengths.reduce((sum, length) => sum + length, 0)).toBe(2760);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(3600);
  });

  it("meshes the cavity under and over it to the neighbour's", () => {
    const ends = face.pieces
      .filter(({ kind }) => kind === "closure")
      .map(({ outline }) => polygonBounds(outline).x[1]);
    expect(Math.max(...ends)).toBe(9099);
  });

  it("leaves nothing that overlaps, is missing or hangs on air", () => {
    expect(facadeProblems(project, facade)).toEqual([]);
    expect(findingsOf(laid, "S008").filter(({ outcome }) => outcome === "fail")).toEqual([]);
  });

  it("is cut from its own section and scheduled with the battens", () => {
    const { plan } = cutFacade(project, facade);
    const part = plan?.lengths.find(({ stock }) => stock === "post");
    expect(part?.result.plan.unplaced).toEqual([]);
    expect(part?.material).toBe("eastern-white-pine");
    const { battens } = takeOff(project, facade, plan);
    expect(
      battens.filter(({ kind, face: on }) => kind === "post" && on === "south").map(({ mark }) => mark),
    ).toEqual(posts.map(({ mark }) => mark));
  });
});

describe("a post at a bare corner", () => {
  it("laps over the batten at the wall's end", () => {
    // South and east of two storeys: boards 22 on 28, 50 out; a post of 22 lies in one plane with them.
    const laid = withPost("two-storey", {
      corner: 0,
      width: 100,
      thickness: 22,
      post: { screw: "board-50" },
    });
    expect(laid.posts.map(({ z }) => z)).toEqual(laid.posts.map(() => [28, 50]));
    expect(laid.posts.length).toBeGreaterThan(1);
    const batten = laid.face.pieces.find(({ mark }) => mark === laid.posts[0]?.supports[0]);
    expect(polygonBounds(batten?.outline ?? []).x).toEqual([7930, 8000]);
    expect(facadeProblems(laid.project, laid.facade)).toEqual([]);
    expect(findingsOf(laid, "S008").filter(({ outcome }) => outcome === "fail")).toEqual([]);
  });

  it("fails where it is too narrow to reach a batten", () => {
    const laid = withPost("two-storey", {
      corner: 0,
      width: 45,
      thickness: 45,
      post: { screw: "batten-100" },
    });
    const [said] = findingsOf(laid, "S008").filter(({ outcome }) => outcome === "fail");
    expect(said?.where.marks).toEqual(laid.posts.map(({ mark }) => mark));
    expect(said?.says.key).toBe("setout.post.unheld");
  });

  it("says that its screws are short where they are", () => {
    const laid = withPost("two-storey", {
      corner: 0,
      width: 120,
      thickness: 40,
      post: { screw: "board-50" },
    });
    const [said] = findingsOf(laid, "S016").filter(({ outcome }) => outcome === "fail");
    expect(said?.demand).toBe(10);
  });
});

describe("a post where none can stand", () => {
  it("is told at an inside corner, which is lapped instead", () => {
    const laid = withPost("l-plan", { corner: 2, width: 90, thickness: 20 });
    expect(laid.posts).toEqual([]);
    expect(findingsOf(laid, "S014").map(({ says }) => says.key)).toContain("setout.corner.post-inside");
    expect(facadeProblems(laid.project, laid.facade)).toEqual([]);
  });
});
