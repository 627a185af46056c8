/** P004 proportion, P007 batten spacing, P008 fire caution, P009 timber outdoors, P010 old paint. */
import { describe, expect, it } from "vitest";
import { battenSpacing } from "../../src/proof/batten-spacing.ts";
import { boardProportion } from "../../src/proof/board-proportion.ts";
import { boundaryFire } from "../../src/proof/boundary-fire.ts";
import { oldPaint } from "../../src/proof/old-paint.ts";
import { timberOutdoors } from "../../src/proof/timber-outdoors.ts";
import { message } from "../../src/text/message.ts";
import { boardsOf, proofFixture, sheetsOf } from "../helpers/proof-fixture.ts";

describe("P004 board proportion", () => {
  const withBoards = (widths: number[], thickness: number) =>
    boardProportion(
      proofFixture({
        project: (project) => Object.assign(boardsOf(project), { widths, thickness }),
        facade: ({ faces: [face] }) => {
          for (const piece of face!.pieces) piece.cut.width = widths[0]!;
        },
      }),
    )[0];

  it("is to be looked at where rule families disagree: 126 by 20 mm is 6.3 to 1", () => {
    const [boards] = boardProportion(proofFixture());
    expect(boards).toMatchObject({
      code: "P004",
      outcome: "attention",
      where: { path: "/claddings/0/widths" },
      demand: 6.3,
      limit: 6,
      ratio: 6.3 / 6,
      source: { document: "BS 8605-1, 2014" },
    });
    expect(boards?.says.values.refused).toEqual([
      message("proof.proportion.between", { rule: message("proof.rule.bs-8605-1"), least: 4, most: 6 }),
    ]);
    expect(boards?.says.values.allowed).toEqual([
      message("proof.proportion.up-to", { rule: message("proof.rule.german-rule"), least: 0, most: 11 }),
      message("proof.proportion.up-to", { rule: message("proof.rule.german-handbook"), least: 0, most: 7 }),
    ]);
  });

  it("passes where all agree and fails where all refuse", () => {
    expect(withBoards([120], 20)).toMatchObject({ outcome: "pass", demand: 6, limit: 6 });
    expect(withBoards([240], 20)).toMatchObject({
      outcome: "fail",
      demand: 12,
      says: { key: "proof.proportion.refused" },
    });
  });

  it("a board may be too narrow for its thickness, or too wide for any", () => {
    expect(withBoards([60], 20)?.says.values.refused).toHaveLength(1);
    expect(withBoards([160], 40)).toMatchObject({ outcome: "attention" });
  });

  it("takes the widest board that was set out", () => {
    const [boards] = boardProportion(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.pieces[0]!.cut.width = 130;
        },
      }),
    );
    expect(boards?.demand).toBe(6.5);
  });
});

describe("P007 batten spacing", () => {
  it("boards: allowed up to 40 times the thickness, better 25 times", () => {
    const [boards] = battenSpacing(proofFixture());
    expect(boards).toMatchObject({
      outcome: "attention",
      where: { marks: ["F1"] },
      demand: 610,
      limit: 500,
      ratio: 610 / 500,
      source: { document: "Fachregel 01 of the German carpentry trade, draft" },
    });
    const spaced = (thickness: number) =>
      battenSpacing(
        proofFixture({ project: (project) => Object.assign(boardsOf(project), { thickness }) }),
      )[0];
    expect(spaced(25)).toMatchObject({ outcome: "pass", limit: 1000 });
    expect(spaced(15)).toMatchObject({ outcome: "fail", limit: 600 });
  });

  it("sheets: the data sheet's largest, and the piece that spans most", () => {
    const [, sheets] = battenSpacing(
      proofFixture({
        facade: ({ faces: [face] }) => {
          for (const point of face!.pieces[4]!.fixings) if (point.x === 2458 + 610) point.x = 3100;
        },
      }),
    );
    expect(sheets).toMatchObject({ outcome: "fail", demand: 617, limit: 610, where: { marks: ["F12"] } });
  });

  it("pieces on rails span upright", () => {
    const [, sheets] = battenSpacing(
      proofFixture({
        facade: ({ faces: [face] }) => {
          for (const piece of face!.pieces.slice(-3)) piece.kind = "rail";
        },
      }),
    );
    expect(sheets).toMatchObject({ outcome: "pass", demand: 580 });
  });

  it("a data sheet that is only typical makes the pass provisional", () => {
    const [, sheets] = battenSpacing(
      proofFixture({
        project: (project) => Object.assign(sheetsOf(project).dataSheet, { basis: "typical" }),
      }),
    );
    expect(sheets).toMatchObject({ outcome: "pass", provisional: true });
  });
});

describe("P008 fire caution near the boundary", () => {
  const at = (toBoundary: number) =>
    boundaryFire(proofFixture({ project: (project) => Object.assign(project.faces[0]!, { toBoundary }) }))[0];

  it("takes the distance from the face of the cladding and never clears a wall", () => {
    expect(boundaryFire(proofFixture())[0]).toMatchObject({ outcome: "not applicable", demand: 8902 });
    expect(at(2498)).toMatchObject({ outcome: "not applicable", demand: 2400, limit: 2400 });
  });

  it("is to be looked at when near, and says so when codes restrict it", () => {
    expect(at(1400)).toMatchObject({
      outcome: "attention",
      demand: 1302,
      says: { key: "proof.fire.near" },
      hint: message("proof.ask-local-code"),
    });
    expect(at(1200)).toMatchObject({
      outcome: "attention",
      demand: 1102,
      says: {
        key: "proof.fire.restricted",
        values: {
          rules: [
            message("proof.rule-asks.mm", { rule: message("proof.rule.canada-exposing-face"), value: 1200 }),
          ],
        },
      },
      source: { clause: "9.10.15.5" },
    });
  });

  it("cannot tell without the distance; sheets are not asked for", () => {
    const findings = boundaryFire(
      proofFixture({ project: (project) => void delete project.faces[0]!.toBoundary }),
    );
    expect(findings).toEqual([
      {
        code: "P008",
        outcome: "cannot evaluate",
        provisional: false,
        where: { face: "front", zone: "boards", path: "/faces/0/toBoundary" },
        says: message("proof.fire.no-distance"),
        hint: message("proof.ask-local-code"),
        source: { kind: "common practice" },
      },
    ]);
  });
});

describe("P009 timber outdoors", () => {
  it("names the lots of a wood that does not resist decay, and passes one that does, provisionally", () => {
    expect(timberOutdoors(proofFixture())).toEqual([
      expect.objectContaining({
        outcome: "pass",
        provisional: true,
        says: message("proof.timber.resistant", {
          wood: { key: "catalogue.species.northern-white-cedar", values: {} },
          lots: ["C"],
        }),
      }),
      {
        code: "P009",
        outcome: "attention",
        provisional: false,
        where: { path: "/claddings/0/lots" },
        says: message("proof.timber.not-resistant-lots", {
          wood: { key: "catalogue.species.quaking-aspen", values: {} },
          lots: ["A"],
        }),
        hint: message("proof.timber.not-resistant-hint"),
        source: {
          kind: "document",
          document: "Wood protection manual MO-312, US Naval Facilities Engineering Command",
          clause: "Table 2-1, comparative decay resistance of the heartwood of some common species",
          figures: ["species.species.quaking-aspen.durability"],
        },
        figures: ["species.species.quaking-aspen.durability"],
      },
    ]);
  });

  it("cannot tell of a wood that the catalogue lacks", () => {
    const [boards] = timberOutdoors(
      proofFixture({
        project: (project) => Object.assign(boardsOf(project), { species: "moonwood", lots: [] }),
      }),
    );
    expect(boards).toMatchObject({ outcome: "cannot evaluate", where: { path: "/claddings/0/species" } });
  });
});

describe("P010 old paint", () => {
  const painted = (face: string, lots = ["A", "C"]) =>
    oldPaint(
      proofFixture({
        project: (project) => {
          Object.assign(project.pile!.boards[0]!, { face });
          boardsOf(project).lots = lots;
        },
      }),
    );

  it("marks the painted boards of lots in use, in either language", () => {
    for (const face of ["painted one side, paint age unknown", "Peinte, âge inconnu"]) {
      expect(painted(face)).toEqual([
        {
          code: "P010",
          outcome: "attention",
          provisional: false,
          where: { path: "/pile/lots/0", marks: ["A1"] },
          says: message("proof.paint.old", { lot: "A", count: 1, of: 1 }),
          hint: message("proof.paint.test"),
          source: { kind: "common practice" },
        },
      ]);
    }
  });

  it("leaves bare boards, lots not in use and projects without a pile alone", () => {
    expect(painted("sawn")).toEqual([]);
    expect(painted("painted", ["C"])).toEqual([]);
    expect(oldPaint(proofFixture({ project: (project) => void delete project.pile }))).toEqual([]);
  });
});
