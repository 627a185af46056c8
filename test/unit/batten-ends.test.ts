/**
 * Ends of battens and rails on the demo, whose places are worked by hand from its file: common practice. Battens stop 2 mm short of the
 * zone's edge for the closure's mesh of 1 mm; rails lie on the uprights beside openings.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { polygonBounds } from "../../src/geometry/polygon.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Piece } from "../../src/setout/facade.ts";
import { designed } from "../helpers/designed.ts";

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function demo(edit: (document: Loose) => void = () => {}) {
  const document = JSON.parse(readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8"));
  edit(document);
  const read = readDocument(document, "battens");
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return designed(read.project);
}

function westUpright(document: Loose): void {
  document.claddings.push({ ...document.claddings[0], id: "upright", direction: "vertical" });
  document.buildUps.push({
    id: "on-rails",
    battenScrew: "batten-140",
    railScrew: "batten-100",
    layers: [
      { kind: "insulation", thickness: 51, material: "mineral wool board", bearing: "soft" },
      { kind: "membrane", thickness: 0, lightStable: true },
      { kind: "batten", stock: "b38x64" },
      { kind: "rail", stock: "b25x64" },
    ],
  });
  const west = document.faces.find(({ id }: Loose) => id === "west");
  west.zones[0] = { ...west.zones[0], cladding: "upright", buildUp: "on-rails" };
  document.rods[0].zones = [{ face: "front", zone: "boards" }];
  document.corners[0] = { left: "west", right: "front", kind: "lapped", lead: "front", gap: 8 };
}

const shortStock = (document: Loose): void => {
  for (const batten of document.stock.battens) batten.lengths = [1500, 1800];
};

const box = ({ outline }: Piece) => polygonBounds(outline);
const endsOf = (pieces: readonly Piece[], face: string, kind: Piece["kind"]) =>
  pieces
    .filter((one) => one.face === face && one.kind === kind)
    .flatMap((piece) => (piece.endings ?? []).map((ending) => ({ piece, ending })));

describe("ends of battens", () => {
  const { pieces, of, facade } = demo();

  it("are told of every batten, each by the mesh, opening or duct it stops short of and by its screw", () => {
    const battens = pieces.filter(({ kind }) => kind === "batten");
    expect(battens.every(({ endings }) => endings?.length === 2)).toBe(true);
    const all = battens.flatMap((piece) => (piece.endings ?? []).map((ending) => ({ piece, ending })));
    expect(new Set(all.map(({ ending }) => ending.at))).toEqual(
      new Set(
        ["base", "top", "head", "sill", "duct", "free", "rake"].filter((at) =>
          all.some((one) => one.ending.at === at),
        ),
      ),
    );
    for (const at of ["base", "top", "head", "sill"] as const) {
      const there = all.filter(({ ending }) => ending.at === at);
      expect(there.length).toBeGreaterThan(0);
      for (const { piece, ending } of there) {
        const met = of(ending.meets ?? "");
        if (met?.kind !== "closure") continue;
        // 2 mm of room less 1 mm of mesh.
        expect(ending.gap).toBeCloseTo(1, 3);
        const y = box(piece).y[ending.end === "lower" ? 0 : 1];
        const mesh = box(met).y;
        expect(Math.min(Math.abs(mesh[0] - y), Math.abs(mesh[1] - y))).toBeCloseTo(ending.gap, 3);
      }
      expect(there.some(({ ending }) => of(ending.meets ?? "")?.kind === "closure")).toBe(true);
    }
    for (const { piece, ending } of all) {
      const ys = piece.fixings.map(({ y }) => y);
      const end = box(piece).y[ending.end === "lower" ? 0 : 1];
      const nearest = Math.min(...ys.map((y) => Math.abs(y - end)));
      if (ys.length > 0) expect(ending.screwFromEnd).toBeCloseTo(nearest, 3);
    }
  });

  it("leave the openings of the cavity that the vents name: no batten or rail lies in one", () => {
    for (const face of facade.faces)
      for (const { position, x, y, closure } of face.vents) {
        const mesh = of(closure);
        // Under a rake the mesh climbs; what lies in it the property tests measure.
        if (!mesh || box(mesh).y[1] - box(mesh).y[0] > 1.001) continue;
        const sticks = face.pieces.filter(({ kind }) => kind === "batten" || kind === "rail");
        const across = sticks
          .map(box)
          .filter((one) => one.y[0] < y + 1 && one.y[1] > y && one.x[0] < x[1] && one.x[1] > x[0]);
        expect({ face: face.id, position, across }).toEqual({ face: face.id, position, across: [] });
      }
  });
});

describe("ends of rails", () => {
  const { pieces, of } = demo(westUpright);
  const rails = endsOf(pieces, "west", "rail");

  it("are tees on the uprights beside a window, screwed 20 mm or more from the end, no more than a joint short of its clearance", () => {
    // W3 spans 2100 to 2700 and 1600 to 2000 or so, with 10 mm clear at each jamb.
    const beside = rails.filter(({ ending }) => ending.at === "jamb" && ending.meets === "W3");
    expect(beside.length).toBeGreaterThanOrEqual(2);
    for (const { piece, ending } of beside) {
      expect(ending.shape).toBe("tee");
      const upright = of(ending.bearsOn ?? "");
      expect(upright?.kind).toBe("batten");
      const [left, right] = box(piece).x;
      expect(ending.end === "right" ? 2090 - right : left - 2710).toBeCloseTo(ending.gap, 3);
      const edge = ending.end === "right" ? right : left;
      expect(edge).toBeGreaterThanOrEqual(box(upright as Piece).x[0]);
      expect(edge).toBeLessThanOrEqual(box(upright as Piece).x[1]);
      expect(ending.screwFromEnd).toBeGreaterThanOrEqual(20);
    }
  });

  it("are told at corners, where they stop before what the neighbour's battens need", () => {
    const corners = rails.filter(({ ending }) => ending.at === "corner");
    expect(corners.length).toBeGreaterThan(0);
    for (const { ending } of corners) expect(ending.gap).toBeGreaterThanOrEqual(0);
  });
});

describe("battens longer than their stock", () => {
  const { pieces, of, facade, findings, project } = demo(shortStock);
  const butts = pieces
    .filter(({ kind }) => kind === "batten")
    .flatMap((piece) =>
      (piece.endings ?? []).filter(({ shape }) => shape === "butt").map((ending) => ({ piece, ending })),
    );

  it("are butted with 5 mm between, each length screwed into timber near the joint and marked for itself", () => {
    expect(butts.length).toBeGreaterThan(10);
    for (const { piece, ending } of butts) {
      const other = of(ending.meets ?? "");
      expect(other?.kind).toBe("batten");
      expect(other?.mark).not.toBe(piece.mark);
      expect(ending.gap).toBeCloseTo(5, 3);
      // Held within a screw's reach of the joint: 25 mm from a sawn end at least, 50 wished; over a plate or block no more.
      expect(ending.screwFromEnd).toBeGreaterThanOrEqual(25 - 1e-6);
      expect(ending.screwFromEnd).toBeLessThanOrEqual(60);
      const holder = [...facade.faces.flatMap(({ solids }) => solids)].find(
        ({ id }) => id === ending.bearsOn,
      );
      expect(holder).toBeDefined();
    }
    const longest = Math.max(...project.stock.battens.flatMap(({ lengths }) => lengths));
    for (const { cut } of pieces.filter(({ kind }) => kind === "batten"))
      expect(cut.length).toBeLessThanOrEqual(longest);
  });

  it("lie a screw's spacing from the joints beside them, or are told", () => {
    const near = new Set(findings("S028").flatMap(({ where }) => where.marks ?? []));
    expect(findings("S028").length).toBeGreaterThan(0);
    for (const face of facade.faces) {
      for (const zone of face.zones) {
        const joints = butts
          .filter(
            ({ piece, ending }) => piece.face === face.id && piece.zone === zone.id && ending.end === "upper",
          )
          .map(({ piece }) => ({ mark: piece.mark, x: box(piece).x[0], y: box(piece).y[1] + 2.5 }))
          .sort((a, b) => a.x - b.x);
        const columns = [
          ...new Set(
            pieces
              .filter((one) => one.kind === "batten" && one.face === face.id && one.zone === zone.id)
              .map((one) => box(one).x[0]),
          ),
        ].sort((a, b) => a - b);
        for (const joint of joints) {
          const before = columns[columns.indexOf(joint.x) - 1];
          const close = joints.filter(({ x, y }) => x === before && Math.abs(y - joint.y) < 600 - 1e-6);
          if (close.length > 0) expect(near).toContain(joint.mark);
        }
      }
    }
  });
});
