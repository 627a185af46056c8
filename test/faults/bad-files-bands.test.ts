import { describe, it } from "vitest";
import { type BadFile, expectTold, replace } from "./bad-files-harness.ts";

// Faces of the demo: 0 west, 1 front, 2 east, 3 north. Claddings: 0 boards, 1 sheets.
const BAD: readonly BadFile[] = [
  {
    kind: "an opening from right to left",
    by: [replace("/faces/1/openings/1/x", [1650, 750])],
    code: "F016",
    path: "/faces/1/openings/1/x",
    value: "1650",
    mend: "[750, 1650]",
    edit: [replace("/faces/1/openings/1/x", [750, 1650])],
  },
  {
    kind: "an opening upside down, in feet",
    by: [replace("/faces/1/openings/1/y", ["6'-10\"", "3 ft"])],
    code: "F016",
    path: "/faces/1/openings/1/y",
    value: "6'-10\"",
    mend: '"3 ft"',
    edit: [replace("/faces/1/openings/1/y", ["3 ft", "6'-10\""])],
  },
  {
    kind: "an opening of no height",
    by: [replace("/faces/1/openings/1/y", [920, 920])],
    code: "F016",
    path: "/faces/1/openings/1/y",
    value: "920",
    mend: "second value",
  },
  {
    kind: "a gap band upside down",
    by: [replace("/claddings/0/gapBand", [12, 6])],
    code: "F016",
    path: "/claddings/0/gapBand",
    value: "12",
    mend: "[6, 12]",
    edit: [replace("/claddings/0/gapBand", [6, 12])],
  },
  {
    kind: "an edge distance upside down",
    by: [replace("/claddings/1/dataSheet/edgeDistance", [70, 25])],
    code: "F016",
    path: "/claddings/1/dataSheet/edgeDistance",
    value: "70",
    mend: "[25, 70]",
    edit: [replace("/claddings/1/dataSheet/edgeDistance", [25, 70])],
  },
  {
    kind: "a rim upside down",
    by: [replace("/structure/bands/0/y", [0, -285])],
    code: "F016",
    path: "/structure/bands/0/y",
    value: "-285",
    mend: "[-285, 0]",
    edit: [replace("/structure/bands/0/y", [-285, 0])],
  },
  {
    kind: "cold above heat",
    by: [replace("/site/climate/extremeTempC/values", [35.6, -36.1])],
    code: "F016",
    path: "/site/climate/extremeTempC/values",
    value: "35.6",
    mend: "[-36.1, 35.6]",
    edit: [replace("/site/climate/extremeTempC/values", [-36.1, 35.6])],
  },
  {
    kind: "a defect backwards",
    by: [replace("/pile/boards/0/defects/0", { kind: "knot hole", from: 625, to: 595 })],
    code: "F016",
    path: "/pile/boards/0/defects/0",
    value: "625",
    mend: "Swap",
    edit: [replace("/pile/boards/0/defects/0/from", 595), replace("/pile/boards/0/defects/0/to", 625)],
  },
];

describe("bands whose ends are swapped", () => {
  it.each(BAD)("$kind", (bad) => expectTold(bad));
});
