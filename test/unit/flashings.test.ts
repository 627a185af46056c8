/** Flashings against the code's figures (Ontario Building Code 9.27.3.8 and 9.20.13.12), worked by hand on the demo. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { polygonContains } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function frontOf(edit: (document: Loose) => void = () => {}) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  edit(document);
  const result = readDocument(document, "flashings");
  if (!result.ok) throw new Error(JSON.stringify(result.findings));
  const { facade, findings } = design(result.project);
  const pieces = facade.faces.flatMap((face) => face.pieces.filter(({ kind }) => kind === "flashing"));
  return { pieces, faces: facade.faces, findings: findings.filter(({ code }) => code === "S018") };
}

describe("the demo's flashings", () => {
  const { pieces, faces, findings } = frontOf();
  const of = (mark: string) => pieces.find((piece) => piece.mark === mark);

  it("stand over every opening and under every window", () => {
    expect(pieces.map(({ mark }) => mark)).toEqual([
      "W-Hh-W3",
      "W-Hs-W3",
      "F-Hh-D1",
      "F-Hh-W2",
      "F-Hs-W2",
      "E-Hh-R1",
      "N-Hh-W4",
      "N-Hs-W4",
      "RB-Hh-D2",
    ]);
    expect(findings.every(({ outcome }) => outcome === "pass")).toBe(true);
  });

  it("fall at least 6 %, rise 50 mm behind the membrane and drip before the plane", () => {
    for (const piece of pieces) {
      const [upstand, back, edge, drip] = piece.profile ?? [];
      if (!upstand || !back || !edge || !drip) throw new Error(`${piece.mark} has no profile`);
      expect((back[1] - edge[1]) / (edge[0] - back[0])).toBeGreaterThanOrEqual(0.06 - 1e-4);
      expect(edge[1] - drip[1]).toBeGreaterThan(0);
      if (piece.mark.includes("-Hh-")) expect(upstand[1] - back[1]).toBe(50);
    }
    // The boards' plane is 98 mm out: the head drips 10 mm before it, the sill 25 mm.
    expect(of("F-Hh-W2")?.profile?.[2]?.[0]).toBe(108);
    expect(of("F-Hs-W2")?.profile?.[2]?.[0]).toBe(123);
  });

  it("turn up dams of 25 mm at both ends, behind the cladding over a head and beside the frame under a sill", () => {
    for (const piece of pieces) {
      const [, back] = piece.profile ?? [];
      const xs = piece.outline.map(([x]) => x);
      expect(piece.dams?.map(({ x }) => x)).toEqual([Math.min(...xs), Math.max(...xs)]);
      for (const { outline } of piece.dams ?? []) {
        for (const [z, y] of outline) {
          const slope = (back?.[1] ?? 0) - 0.06 * (z - (back?.[0] ?? 0));
          expect([0, 25]).toContain(Math.round((y - slope) * 1000) / 1000);
        }
      }
    }
    // Of the front: boards of 20 whose plane is 98 mm out.
    const reachOf = (mark: string) => Math.max(...(of(mark)?.dams?.[0]?.outline ?? []).map(([z]) => z));
    expect(reachOf("F-Hh-W2")).toBe(78);
    expect(reachOf("F-Hs-W2")).toBe(98);
  });

  it("stand with their dams in no cladding, batten, return or trim: only the mesh over a head is slit for them", () => {
    const clashes: string[] = [];
    for (const face of faces)
      for (const { mark, dams = [] } of face.pieces)
        for (const dam of dams) {
          const [low, high] = [Math.min, Math.max].map((of) => of(...dam.outline.map(([, y]) => y))) as [
            number,
            number,
          ];
          const [back, front] = [Math.min, Math.max].map((of) => of(...dam.outline.map(([z]) => z))) as [
            number,
            number,
          ];
          for (const other of face.pieces) {
            if (other.mark === mark || other.kind === "membrane" || other.profile || other.planProfile)
              continue;
            const inDepth = Math.min(front, other.z[1]) - Math.max(back, other.z[0]) > 0.01;
            if (!inDepth || other.kind === "closure") continue;
            const meets = [0.02, 0.5, 0.98].some((share) =>
              polygonContains(other.outline, [dam.x, low + (high - low) * share]),
            );
            if (meets) clashes.push(`${mark} in ${other.mark}`);
          }
        }
    expect(clashes).toEqual([]);
  });

  it("need what a hand works out: 2 of play, 6 % of the depth, 8 of drip", () => {
    const atW2 = findings.filter(({ where }) => where.opening === "W2");
    const [head, sill] = atW2.sort((a, b) => (a.demand ?? 0) - (b.demand ?? 0));
    expect(head?.demand).toBeCloseTo(2 + 0.06 * (108 - 51) + 8, 3);
    expect(sill?.demand).toBeCloseTo(2 + 0.06 * (123 - 51) + 8, 3);
    expect([head?.limit, sill?.limit]).toEqual([22, 20]);
  });

  it("are cut from their developed width and from their length with a dam of 25 mm at each end, less their bends", () => {
    // Machinery's Handbook: a bend of A leaves A (r + 0.407 t) of 2 (r + t) tan(A / 2); r 1, t 0.6.
    const bend = (turn: number) => 2 * 1.6 * Math.tan(turn / 2) - turn * (1 + (0.64 / (Math.PI / 2)) * 0.6);
    const fall = Math.atan(0.06);
    const [right, toSlope] = [Math.PI / 2, Math.PI / 2 - fall];
    const head = of("F-Hh-W2")?.cut;
    // Upstand, slope, drip: the upstand leans back from the slope by the fall, the drip hangs from it.
    expect(head?.width).toBeCloseTo(50 + Math.hypot(57, 57 * 0.06) + 8 - 2 * bend(toSlope), 2);
    expect(head?.length).toBeCloseTo(900 + 2 * 10 - 2 * 2 + 2 * 25 - 2 * bend(right), 3);
    const sill = of("F-Hs-W2")?.cut;
    expect(sill?.width).toBeCloseTo(Math.hypot(72, 72 * 0.06) + 8 - bend(toSlope), 2);
  });
});

it("fails, and makes none, where the clearance is too small", () => {
  const { pieces, findings } = frontOf((document) =>
    Object.assign(document.limits.clearances.head, { value: 9 }),
  );
  expect(pieces.some(({ mark }) => mark.includes("-Hh-"))).toBe(false);
  expect(findings.filter(({ outcome }) => outcome === "fail")).toHaveLength(6);
});
