/** A face from a layer of a drawing: what is read, what is refused by name, and what becomes of the face that it replaces. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { PatchOperation } from "../../src/findings/finding.ts";
import { applyPatch } from "../../src/project/edit.ts";
import type { Source } from "../../src/project/editing/change.ts";
import { layersOf } from "../../src/project/intake/dxf/drawing.ts";
import { readDrawing } from "../../src/project/intake/dxf/read-drawing.ts";
import { faceOfLayer } from "../../src/project/intake/face/face-of-layer.ts";
import { replaceFace } from "../../src/project/intake/face/replace-face.ts";
import type { TakenFace } from "../../src/project/intake/face/shape.ts";
import { startFace } from "../../src/project/intake/face/start-face.ts";
import { readDocument, readProject } from "../../src/project/read.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { box, dxf, lightLine } from "../helpers/dxf.ts";

function drawingOf(text: string) {
  const read = readDrawing(text, "front.dxf");
  if (!read.ok) throw new Error(read.findings.map(({ says }) => say(says, ENGLISH_MM)).join());
  return read.drawing;
}

function taken(text: string, unit: "mm" | "in" | "m" = "mm"): TakenFace {
  const result = faceOfLayer(drawingOf(text), { layer: "FACE", unit });
  if (!result.ok) throw new Error(result.findings.map(({ says }) => say(says, ENGLISH_MM)).join());
  return result.face;
}

function refusals(text: string): string[] {
  const result = faceOfLayer(drawingOf(text), { layer: "FACE", unit: "mm" });
  expect(result.ok).toBe(false);
  return result.findings
    .filter(({ outcome }) => outcome === "fail")
    .map(({ says, hint }) => `${say(says, ENGLISH_MM)} ${hint ? say(hint, ENGLISH_MM) : ""}`);
}

const outline = lightLine(box(100, -50, 6000, 2700), { handle: "10" });
const window = lightLine(box(1100, 850, 1200, 1300), { handle: "11" });
const door = lightLine(box(4000, -50, 900, 2100), { handle: "12" });

describe("a face from a layer", () => {
  it("is its largest closed line, with the closed lines within as openings, from the lower left", () => {
    expect(taken(dxf({ entities: [window, outline, door] }))).toEqual({
      outline: [
        [0, 0],
        [6000, 0],
        [6000, 2700],
        [0, 2700],
      ],
      openings: [
        { x: [1000, 2200], y: [900, 2200] },
        { x: [3900, 4800], y: [0, 2100] },
      ],
    });
  });

  it("reads vertices that carry more than their place, and older polylines whose vertices follow them", () => {
    const old = [
      [0, "POLYLINE"],
      [5, "20"],
      [8, "FACE"],
      [66, 1],
      [10, 0],
      [20, 0],
      [30, 0],
      [70, 1],
      ...box(200, 100, 800, 900).flatMap(([x, y], i) => [
        [0, "VERTEX"],
        [5, `2${i}A`],
        [8, "FACE"],
        [10, x],
        [20, y],
      ]),
      [0, "SEQEND"],
    ] as [number, string | number][];
    const face = taken(
      dxf({
        entities: [
          lightLine([
            [0, 0],
            [4000, 0],
            [4000, 2000],
            [2000, 3000],
            [0, 2000],
          ]),
          old,
        ],
      }),
    );
    expect(face.outline).toEqual([
      [0, 0],
      [4000, 0],
      [4000, 2000],
      [2000, 3000],
      [0, 2000],
    ]);
    expect(face.openings).toEqual([{ x: [200, 1000], y: [100, 1000] }]);
  });

  it("takes a line as closed whose last point is its first, and drops points on a straight", () => {
    const line = lightLine(
      [
        [0, 0],
        [1000, 0],
        [3000, 0],
        [3000, 2000],
        [0, 2000],
        [0, 0],
      ],
      { closed: false },
    );
    expect(taken(dxf({ entities: [line] })).outline).toEqual([
      [0, 0],
      [3000, 0],
      [3000, 2000],
      [0, 2000],
    ]);
  });

  it("measures in the drawing's unit, exact in inches", () => {
    const face = taken(dxf({ units: 1, entities: [lightLine(box(0, 0, 240.5, 96))] }), "in");
    expect(face.outline[2]).toEqual([6108.7, 2438.4]);
    expect(drawingOf(dxf({ units: 1, entities: [] })).unit).toBe("in");
    expect(drawingOf(dxf({ units: 6, entities: [] })).unit).toBe("m");
    expect(drawingOf(dxf({ units: 0, entities: [] })).unit).toBeUndefined();
  });

  it("expands blocks: moved, turned, mirrored, in rows, and on the layer that they are put in on", () => {
    const blocks = [
      [0, "BLOCK"],
      [8, "0"],
      [2, "WINDOW"],
      [10, 100],
      [20, 0],
      ...lightLine(box(100, 0, 600, 400), { layer: "0", handle: "B1" }),
      [0, "ENDBLK"],
    ] as [number, string | number][];
    const insert = [
      [0, "INSERT"],
      [5, "30"],
      [8, "FACE"],
      [2, "WINDOW"],
      [10, 1000],
      [20, 500],
      [50, 90],
      [41, -1],
      [70, 2],
      [44, 900],
    ] as [number, string | number][];
    // Turned by a quarter, columns go upwards; mirrored before, the window reaches to the right: 400 wide, 600 high downwards.
    const face = taken(
      dxf({ blocks, entities: [lightLine(box(0, -200, 5000, 3000), { handle: "10" }), insert] }),
    );
    expect(face.openings).toEqual([
      { x: [600, 1000], y: [100, 700] },
      { x: [600, 1000], y: [1000, 1600] },
    ]);
  });

  it("lists layers with most closed lines first, written letters put back", () => {
    const drawing = drawingOf(
      dxf({ entities: [outline, window, lightLine(box(0, 0, 1, 1), { layer: "Fa\\U+00E7ade" })] }),
    );
    expect(layersOf(drawing)).toEqual([
      { name: "FACE", closed: 2, others: 0 },
      { name: "Façade", closed: 1, others: 0 },
    ]);
  });
});

describe("a line that cannot bound a face is refused by layer, handle and mend", () => {
  it.each([
    ["open", lightLine(box(1000, 1000, 500, 500), { handle: "3F", closed: false }), "is open. Join it"],
    [
      "arc",
      [
        [0, "ARC"],
        [5, "3F"],
        [8, "FACE"],
        [10, 1],
        [20, 1],
        [40, 5],
      ],
      "is curved.",
    ],
    [
      "spline",
      [
        [0, "SPLINE"],
        [5, "3F"],
        [8, "FACE"],
      ],
      "is curved.",
    ],
    ["bulge", lightLine(box(1000, 1000, 500, 500), { handle: "3F", extra: [[42, 0.5]] }), "is curved."],
    [
      "tilted",
      lightLine(box(1000, 1000, 500, 500), { handle: "3F", extra: [[230, -1]] }),
      "plane. Flatten it",
    ],
    [
      "unknown",
      [
        [0, "REGION"],
        [5, "3F"],
        [8, "FACE"],
      ],
      "cannot bound a face.",
    ],
    [
      "askew",
      lightLine(
        [
          [1000, 1000],
          [1500, 1003],
          [1500, 1500],
          [1000, 1500],
        ],
        { handle: "3F" },
      ),
      "no upright rectangle.",
    ],
    ["outside", lightLine(box(9000, 0, 500, 500), { handle: "3F" }), "outside the outline 10"],
    ["within another", lightLine(box(1200, 950, 1000, 1100), { handle: "3F" }), "11 lie over each other"],
    [
      "crossing",
      lightLine(
        [
          [1000, 1000],
          [1500, 1500],
          [1500, 1000],
          [1000, 1500],
        ],
        { handle: "3F" },
      ),
      "crosses itself",
    ],
  ])("%s", (_, line, says) => {
    const told = refusals(dxf({ entities: [outline, window, line as [number, string | number][]] }));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain(says);
    expect(told[0]).toContain("layer FACE");
    expect(told[0]).toContain("3F");
  });

  it("names what else is drawn where a layer has no closed line", () => {
    const [told] = refusals(dxf({ entities: [lightLine(box(0, 0, 9, 9), { layer: "WALLS" })] }));
    expect(told).toContain("Closed lines by layer: WALLS (1).");
  });

  it("leaves texts and doubled lines out, and says so", () => {
    const text = [
      [0, "TEXT"],
      [5, "40"],
      [8, "FACE"],
      [1, "north"],
    ] as [number, string][];
    const result = faceOfLayer(drawingOf(dxf({ entities: [outline, window, window, text] })), {
      layer: "FACE",
      unit: "mm",
    });
    expect(result.ok && result.face.openings).toHaveLength(1);
    expect(result.findings.map(({ outcome }) => outcome)).toEqual(["attention", "attention"]);
  });
});

describe("a file that is no DXF", () => {
  it.each([
    ["binary", "AutoBinary\0\x01", "is no text"],
    ["prose", "Dear sir,\nplease find", "whole number here"],
    ["cut off", dxf({ entities: [outline] }).slice(0, 300), "breaks off"],
  ])("%s", (_, text, says) => {
    const read = readDrawing(text, "front.dxf");
    expect(!read.ok && say(read.findings[0]!.says, ENGLISH_MM)).toContain(says);
  });

  it("blocks that hold themselves end in words", () => {
    const self = [
      [0, "INSERT"],
      [5, "1"],
      [8, "0"],
      [2, "A"],
      [70, 9],
      [71, 9],
    ] as [number, string | number][];
    const blocks = [[0, "BLOCK"], [2, "A"], [10, 0], [20, 0], ...self, [0, "ENDBLK"]] as [
      number,
      string | number,
    ][];
    const read = readDrawing(dxf({ blocks, entities: [self] }), "front.dxf");
    expect(!read.ok && say(read.findings[0]!.says, ENGLISH_MM)).toContain("without end");
  });
});

const example = new URL("../../examples/two-storey.outerleaf.json", import.meta.url);

function sourceOf(text: string): Source {
  const read = readProject(text, "demo");
  if (!read.ok) throw new Error("the demo is not read");
  return read;
}

describe("a face that is replaced", () => {
  const source = sourceOf(readFileSync(example, "utf8"));
  const [face] = source.project.faces;
  const id = face?.id ?? "";
  const low = Math.min(...(face?.outline ?? []).map(([, y]) => y));
  const same: TakenFace = {
    outline: (face?.outline ?? []).map(([x, y]) => [x, y - low]),
    openings: (face?.openings ?? []).map(({ x, y }) => ({ x, y: [y[0] - low, y[1] - low] })),
  };

  /** The project after an edit of its file. */
  function editedBy(operations: readonly PatchOperation[]): Project {
    const patched = applyPatch(source.document, operations);
    if (!patched.ok) throw new Error("the edit does not apply");
    const again = readDocument(patched.document, "demo");
    if (!again.ok) throw new Error("the project is not read again");
    return again.project;
  }

  it("with itself changes nothing but the outline written again", () => {
    const replaced = replaceFace(source, { id, taken: same, file: "front.dxf" });
    if (!replaced.ok) throw new Error("refused");
    const again = editedBy(replaced.change.operations);
    expect(again).toEqual(source.project);
    expect(replaced.tells.map(({ key }) => key)).toEqual([
      "intake.change.outline-stays",
      "intake.change.stay",
    ]);
  });

  it("keeps the names of openings that move, retires those that go, and gives new ones new names", () => {
    const [first, ...others] = same.openings;
    const moved = { x: [first!.x[0] + 100, first!.x[1] + 100] as const, y: first!.y };
    const replaced = replaceFace(source, {
      id,
      taken: { ...same, openings: [moved, ...others.slice(0, -1)] },
      file: "front.dxf",
    });
    if (!replaced.ok) throw new Error("refused");
    const again = editedBy(replaced.change.operations);
    const now = again.faces[0]!;
    const before = face!.openings;
    expect(now.openings.map((one) => one.id)).toEqual(before.slice(0, -1).map((one) => one.id));
    expect(now.openings[0]).toEqual({ ...before[0], x: moved.x });
    expect(again.retired).toContain(before.at(-1)!.id);
  });

  it("is refused in a closed plan where it would be longer", () => {
    const closed = {
      ...source,
      project: {
        ...source.project,
        corners: source.project.faces.map(({ id: left }, i, all) => ({
          left,
          right: all[(i + 1) % all.length]!.id,
          kind: "open mitre" as const,
          gap: 10,
        })),
      },
    };
    const wider = same.outline.map(([x, y]): [number, number] => [x * 2, y]);
    const replaced = replaceFace(closed, { id, taken: { outline: wider, openings: [] }, file: "front.dxf" });
    expect(!replaced.ok && replaced.findings[0]?.says.key).toBe("intake.face.closed");
  });
});

describe("a start from a drawing", () => {
  it("is a project that reads, with the face, a door where an opening stands low, and windows", () => {
    const started = startFace(taken(dxf({ entities: [outline, window, door] })), {
      title: "Shed",
      display: { units: "mm", language: "en" },
      file: "front.dxf",
    });
    if (!started.ok) throw new Error(started.findings.map(({ says }) => say(says, ENGLISH_MM)).join());
    const read = readDocument(started.document, "shed");
    expect(
      read.ok && read.project.faces[0]?.openings.map(({ id, kind, toBase }) => [id, kind, toBase]),
    ).toEqual([
      ["W1", "window", undefined],
      ["D1", "door", true],
    ]);
    expect(read.ok && read.project.faces[0]?.plan.to).toEqual([6000, 0]);
  });
});
