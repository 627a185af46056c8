import { describe, expect, it } from "vitest";
import { readDocument } from "../../src/project/read.ts";
import { add, type BadFile, changedDemo, expectTold, FILE, remove, replace } from "./bad-files-harness.ts";

// Faces of the demo: 0 west, 1 front, 2 east, 3 north. Claddings: 0 boards, 1 sheets.
const window = (id: string, x: [number, number], y: [number, number]) => ({ id, kind: "window", x, y });

const BAD: readonly BadFile[] = [
  {
    kind: "an outline that crosses itself",
    by: [
      replace("/faces/3/outline", [
        [0, -50],
        [7200, 2290],
        [7200, -50],
        [0, 2290],
      ]),
    ],
    code: "F011",
    path: "/faces/3/outline",
    value: "4",
    mend: "one after the other",
  },
  {
    kind: "an outline that is closed twice",
    by: [add("/faces/3/outline/4", [0, -50])],
    code: "F011",
    path: "/faces/3/outline",
    value: "5",
    mend: "closes by itself",
  },
  {
    kind: "an outline without area",
    by: [
      replace("/faces/3/outline", [
        [0, 0],
        [3000, 0],
        [7200, 0],
      ]),
      replace("/faces/3/openings", []),
    ],
    code: "F011",
    path: "/faces/3/outline",
    value: "3",
    mend: "three corners",
  },
  {
    kind: "an opening above the wall",
    by: [replace("/faces/3/openings/0/y", [1720, 2400])],
    code: "F012",
    path: "/faces/3/openings/0",
    value: "2400",
    mend: "2290 mm",
  },
  {
    kind: "an opening through a rake",
    by: [replace("/faces/0/openings/0", window("W3", [2400, 3000], [2300, 2700]))],
    code: "F012",
    path: "/faces/0/openings/0",
    value: "W3",
    mend: "3010 mm",
  },
  {
    kind: "openings that overlap",
    by: [add("/faces/3/openings/1", window("W5", [4700, 5300], [1500, 2000]))],
    code: "F013",
    path: "/faces/3/openings/1",
    value: "x 4700 to 4800",
    valueFr: "x de 4700 à 4800",
    mend: "Move one",
  },
  {
    kind: "a zone upside down",
    by: [add("/faces/3/zones/0/y", [2000, 0])],
    code: "F014",
    path: "/faces/3/zones/0/y",
    value: "2000",
    mend: "[0, 2000]",
    edit: [replace("/faces/3/zones/0/y", [0, 2000])],
  },
  {
    kind: "a zone from right to left",
    by: [replace("/faces/1/zones/1/x", [5000, 2410])],
    code: "F014",
    path: "/faces/1/zones/1/x",
    value: "5000",
    mend: "[2410, 5000]",
    edit: [replace("/faces/1/zones/1/x", [2410, 5000])],
  },
  {
    kind: "a zone that starts past its end",
    by: [replace("/faces/1/zones/1/x", [7300, "right end"])],
    code: "F014",
    path: "/faces/1/zones/1/x",
    value: '[7300, "right end"]',
    mend: "left of where it ends",
  },
  {
    kind: "a zone past its face",
    by: [replace("/faces/1/zones/1/x", [2410, 7300])],
    code: "F014",
    path: "/faces/1/zones/1/x",
    value: "[2410, 7300]",
    mend: "between 0 mm and 7200 mm",
  },
  {
    kind: "a zone over its face",
    by: [add("/faces/3/zones/0/y", [-50, 2600])],
    code: "F014",
    path: "/faces/3/zones/0/y",
    value: "[-50, 2600]",
    mend: "2290 mm",
  },
  {
    kind: "zones that overlap",
    by: [replace("/faces/1/zones/1/x/0", 2300)],
    code: "F015",
    path: "/faces/1/zones/1",
    value: "x 2300 to 2400",
    valueFr: "x de 2300 à 2400",
    mend: "End one zone",
  },
  {
    kind: "a duct past the edge",
    by: [replace("/faces/0/penetrations/0/x", 60)],
    code: "F017",
    path: "/faces/0/penetrations/0",
    value: "WP1",
    mend: "0 mm to 4800 mm",
  },
  {
    kind: "a duct through a window",
    by: [replace("/faces/0/penetrations/0/x", 2050)],
    code: "F017",
    path: "/faces/0/penetrations/0",
    value: "W3",
    mend: "Move one",
  },
  {
    kind: "an azimuth against the plan",
    by: [replace("/faces/2/azimuthDeg", 85)],
    code: "F018",
    path: "/faces/2/azimuthDeg",
    value: "85",
    mend: "Write 82",
  },
  {
    kind: "a face seen from inside",
    by: [replace("/faces/2/azimuthDeg", 262)],
    code: "F018",
    path: "/faces/2/azimuthDeg",
    value: "262",
    mend: "Write 82",
  },
  {
    kind: "a face without length",
    by: [replace("/faces/3/plan/to", [7200, 4800])],
    code: "F019",
    path: "/faces/3/plan",
    value: "0 mm",
    mend: "left and the right end",
    also: ["F014", "F029"],
  },
  {
    kind: "an outline longer than its wall",
    by: [replace("/faces/3/outline/1/0", 7260)],
    code: "F019",
    path: "/faces/3/outline",
    value: "7260 mm",
    mend: "7200 mm",
  },
  {
    kind: "sheets on a rod",
    by: [add("/rods/0/zones/2", { face: "north", zone: "sheets" })],
    code: "F020",
    path: "/rods/0/zones/2",
    value: "north",
    mend: "off the rod",
  },
  {
    kind: "boards on no rod",
    by: [remove("/rods/0/zones/1")],
    code: "F020",
    path: "/faces/0/zones/0",
    value: "west",
    mend: "zones of a rod",
  },
  {
    kind: "a zone on two rods",
    by: [
      add("/rods/1", {
        id: "second",
        zones: [{ face: "west", zone: "boards" }],
        leads: ["west"],
        lineTolerance: 2,
      }),
    ],
    code: "F020",
    path: "/rods/1/zones/0",
    value: "west",
    mend: "one rod",
  },
  {
    kind: "a board screw for sheets",
    by: [replace("/claddings/1/screw", "board-45")],
    code: "F020",
    path: "/claddings/1/screw",
    value: '"board-45"',
    mend: "sheet-38",
  },
  {
    kind: "a defect past its board",
    by: [replace("/pile/boards/0/defects/0/to", 2500)],
    code: "F023",
    path: "/pile/boards/0/defects/0",
    value: "2500",
    mend: "2425 mm",
  },
  {
    kind: "a wane as wide as its board",
    by: [add("/pile/boards/0/wane", { edge: "left", width: 148 })],
    code: "F023",
    path: "/pile/boards/0/wane/width",
    value: "148",
    mend: "less than 148 mm",
  },
  {
    kind: "two corners at one end",
    by: [add("/corners/4", { left: "west", right: "front", kind: "open mitre", gap: 8 })],
    code: "F025",
    path: "/corners/4/left",
    value: '"west"',
    mend: "one corner",
    also: ["F025"],
  },
  {
    kind: "a corner the wrong way round",
    by: [replace("/corners/3", { left: "west", right: "north", kind: "lapped", lead: "west", gap: 8 })],
    code: "F029",
    path: "/corners/3",
    value: "west",
    mend: "north is the left one",
    edit: [replace("/corners/3/left", "north"), replace("/corners/3/right", "west")],
    also: ["F025", "F025"],
  },
  {
    kind: "a corner that does not meet",
    by: [
      replace("/faces/3/plan/from", [7190, 4800]),
      replace("/faces/3/outline/1/0", 7190),
      replace("/faces/3/outline/2/0", 7190),
    ],
    code: "F029",
    path: "/corners/2",
    value: "10 mm",
    mend: "Correct the plan",
  },
  {
    kind: "a lap without its lead",
    by: [remove("/corners/1/lead")],
    code: "F004",
    path: "/corners/1/lead",
    value: "lead",
    mend: "front or east",
  },
  {
    kind: "a post without its section",
    by: [replace("/corners/1/kind", "post")],
    code: "F004",
    path: "/corners/1/post",
    value: "post",
    mend: "a batten of the stock",
  },
  {
    kind: "ground from right to left",
    by: [
      replace("/faces/3/ground", [
        [7200, -350],
        [0, -350],
      ]),
    ],
    code: "F030",
    path: "/faces/3/ground/1",
    value: "7200 mm",
    mend: "from left to right",
  },
  {
    kind: "readings out of order",
    by: [replace("/survey/0/y", [0, 3000, 1500])],
    code: "F030",
    path: "/survey/0/y/2",
    value: "1500 mm",
    mend: "from left to right",
  },
  {
    kind: "a survey without its last row",
    by: [remove("/survey/0/outward/2")],
    code: "F031",
    path: "/survey/0/outward",
    value: "2 rows",
    valueFr: "2 lignes",
    mend: "3 in all",
  },
  {
    kind: "a survey row cut short",
    by: [remove("/survey/0/outward/1/4")],
    code: "F031",
    path: "/survey/0/outward/1",
    value: "4 readings",
    valueFr: "4 relevés",
    mend: "5 in all",
  },
  {
    kind: "one width twice",
    by: [replace("/claddings/0/widths", [94, 94])],
    code: "F032",
    path: "/claddings/0/widths/1",
    value: "94 mm",
    mend: "Leave one",
    edit: [remove("/claddings/0/widths/1")],
  },
  {
    kind: "a waiver of no rule",
    by: [add("/waivers", [{ code: "P999", who: "the owner", when: "2026-04-30", why: "paved" }])],
    code: "F007",
    outcome: "attention",
    path: "/waivers/0/code",
    value: '"P999"',
    mend: '"P009" is nearest',
  },
];

describe("values that do not agree with each other", () => {
  it.each(BAD)("$kind", (bad) => expectTold(bad));

  it("places are told by the ids of their face and opening too", () => {
    const { findings } = readDocument(changedDemo([replace("/faces/1/openings/1/x", [1650, 750])]), FILE);
    expect(findings[0]?.where).toEqual({ path: "/faces/1/openings/1/x", face: "front", opening: "W2" });
  });

  it("several disagreements of one file are all told at once", () => {
    const { ok, findings } = readDocument(
      changedDemo([
        replace("/faces/1/openings/1/x", [1650, 750]),
        replace("/faces/3/zones/0/cladding", "tiles"),
        replace("/faces/2/azimuthDeg", 70),
        replace("/claddings/0/widths", [126, 126]),
        remove("/survey/0/outward/2"),
      ]),
      FILE,
    );
    expect(ok).toBe(false);
    expect(findings.map(({ code, where }) => `${code} ${where.path}`).sort()).toEqual([
      "F010 /faces/3/zones/0/cladding",
      "F016 /faces/1/openings/1/x",
      "F018 /faces/2/azimuthDeg",
      "F031 /survey/0/outward",
      "F032 /claddings/0/widths/1",
    ]);
  });

  it("openings and zones that touch do not overlap, and a rake may cut off what zones would share", () => {
    const touching = changedDemo([
      add("/faces/3/openings/1", window("W5", [4800, 5300], [1720, 2100])),
      replace("/faces/1/zones/1/x/0", 2400),
    ]);
    expect(readDocument(touching, FILE).findings).toEqual([]);
  });
});
