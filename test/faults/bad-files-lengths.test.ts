import { describe, it } from "vitest";
import { type BadFile, expectTold, replace } from "./bad-files-harness.ts";

const BAD: readonly BadFile[] = [
  {
    kind: "a length in an unknown unit",
    by: [replace("/structure/studs/depth", "140 mn")],
    code: "F024",
    path: "/structure/studs/depth",
    value: '"140 mn"',
    mend: "mm, cm, m, in, ft",
  },
  {
    kind: "a length in words",
    by: [replace("/faces/0/openings/0/x/0", "wide")],
    code: "F024",
    path: "/faces/0/openings/0/x/0",
    value: '"wide"',
    mend: "text with a unit",
  },
  {
    kind: "a length of no text",
    by: [replace("/faces/0/openings/0/x/0", "")],
    code: "F024",
    path: "/faces/0/openings/0/x/0",
    value: '""',
    mend: "text with a unit",
  },
  {
    kind: "thirteen inches beside feet",
    by: [replace("/roof/topVentGap", "1'-13\"")],
    code: "F024",
    path: "/roof/topVentGap",
    value: "1'-13\"",
    mend: "under 12",
  },
  {
    kind: "a fraction of millimetres",
    by: [replace("/roof/topVentGap", "3/4")],
    code: "F024",
    path: "/roof/topVentGap",
    value: '"3/4"',
    mend: "inches or feet",
  },
  {
    kind: "a fraction over zero",
    by: [replace("/roof/topVentGap", "3/0 in")],
    code: "F024",
    path: "/roof/topVentGap",
    value: '"3/0 in"',
    mend: "more than 0",
  },
  {
    kind: "two decimal signs",
    by: [replace("/roof/topVentGap", "1.220,5")],
    code: "F024",
    path: "/roof/topVentGap",
    value: '"1.220,5"',
    mend: "one decimal sign",
  },
  {
    kind: "a length to the moon",
    by: [replace("/roof/topVentGap", "384400000 m")],
    code: "F024",
    path: "/roof/topVentGap",
    value: '"384400000 m"',
    mend: "200 m at most",
  },
  {
    kind: "a length in text out of range",
    by: [replace("/roof/topVentGap", "201 m")],
    code: "F006",
    path: "/roof/topVentGap",
    value: '"201 m"',
    mend: "at most 200000",
  },
];

describe("texts that are no lengths", () => {
  it.each(BAD)("$kind", (bad) => expectTold(bad));
});
