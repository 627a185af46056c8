/** What a file says of a zone's joints, before anything is laid out. */
import { describe, it } from "vitest";
import { add, type BadFile, expectTold } from "../faults/bad-files-harness.ts";

// Faces of the demo: 1 front with boards (zone 0) and sheets (zone 1).
const BAD: readonly BadFile[] = [
  {
    kind: "a forbidden band from right to left",
    by: [add("/faces/1/zones/1/joints", { forbidden: { x: [[5000, 4700]] } })],
    code: "F016",
    path: "/faces/1/zones/1/joints/forbidden/x/0",
    value: "5000",
    mend: "[4700, 5000]",
    edit: [{ op: "replace", path: "/faces/1/zones/1/joints/forbidden/x/0", value: [4700, 5000] }],
  },
  {
    kind: "a forbidden band of no height",
    by: [add("/faces/1/zones/1/joints", { forbidden: { y: [[2000, 2000]] } })],
    code: "F016",
    path: "/faces/1/zones/1/joints/forbidden/y/0",
    value: "2000",
    mend: "second value",
  },
  {
    kind: "a joint pinned twice",
    by: [add("/faces/1/zones/1/joints", { pinned: { x: [4805, 6700, 4805] } })],
    code: "F032",
    outcome: "attention",
    path: "/faces/1/zones/1/joints/pinned/x/2",
    value: "4805",
    mend: "Leave one of the two out",
    edit: [{ op: "remove", path: "/faces/1/zones/1/joints/pinned/x/2" }],
  },
  {
    kind: "joints pinned on boards",
    by: [add("/faces/1/zones/0/joints", { pinned: { x: [1200] } })],
    code: "F020",
    outcome: "attention",
    path: "/faces/1/zones/0/joints",
    value: "boards",
    mend: "clad the zone in sheets",
    edit: [{ op: "remove", path: "/faces/1/zones/0/joints" }],
  },
  {
    kind: "a pattern on boards",
    by: [add("/faces/1/zones/0/pattern", "grid")],
    code: "F020",
    outcome: "attention",
    path: "/faces/1/zones/0/pattern",
    value: "pattern",
    mend: 'Take "pattern" out',
    edit: [{ op: "remove", path: "/faces/1/zones/0/pattern" }],
  },
];

describe("joint lines in the file", () => {
  it.each(BAD)("$kind", (bad) => expectTold(bad));
});
