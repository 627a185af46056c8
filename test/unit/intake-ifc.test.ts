/** Walls from an IFC model: what is read, which side looks outside, where ends meet, and what is refused by entity, field and value. */
import { describe, expect, it } from "vitest";
import { type WallChoice, wallsInto } from "../../src/project/intake/ifc/take-walls.ts";
import { readDocument } from "../../src/project/read.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { box, IfcText, type ModelUnit } from "../helpers/ifc.ts";
import { begun, modelOf, refusal, shape, told } from "../helpers/ifc-taken.ts";

describe("walls of a model begin a project", () => {
  it.each(["mm", "m", "ft", "in"] as ModelUnit[])(
    "in %s: a face each, openings and corners where they are",
    (unit) => {
      const ifc = new IfcText(unit, { north: [0, 1] });
      const { front, right } = box(ifc);
      ifc.opening(front.wall, ...front.hole(1000, 900, 1200, 1200), { type: "IFCWINDOW", name: "W7" });
      ifc.opening(front.wall, ...front.hole(4000, 0, 900, 2100), { type: "IFCDOOR", name: "Front door 90" });
      ifc.opening(right.wall, ...right.hole(700, 1000, 600, 600));
      const { project, tells } = begun(ifc.text());
      expect(project.faces.map(({ id, azimuthDeg, plan }) => [id, azimuthDeg, plan.from, plan.to])).toEqual([
        ["front", 180, [0, 0], [6000, 0]],
        ["right", 90, [6000, 0], [6000, 4000]],
        ["a", 0, [6000, 4000], [0, 4000]],
        ["left", 270, [0, 4000], [0, 0]],
      ]);
      expect(project.corners?.map(({ left, right: to }) => `${left} ${to}`)).toEqual([
        "front right",
        "right a",
        "a left",
        "left front",
      ]);
      const [first, second] = project.faces;
      expect(shape(first!).outline).toEqual([
        [0, 0],
        [6000, 0],
        [6000, 2600],
        [0, 2600],
      ]);
      expect(first!.openings.map(({ id, kind, note, toBase }) => [id, kind, note, toBase])).toEqual([
        ["W7", "window", undefined, undefined],
        ["D1", "door", "Front door 90", true],
      ]);
      expect(shape(first!).openings).toEqual([
        [1000, 900, 2200, 2100],
        [4000, 0, 4900, 2100],
      ]);
      // The short wall stops at the long one's inner side: its face goes on to the corner, and its window stays where it is.
      expect(shape(second!).openings).toEqual([[1000, 1000, 1600, 1600]]);
      const said = tells.map((one) => say(one, ENGLISH_MM));
      expect(said).toContain("Left end of right: 300 mm further out than the wall is drawn, to the corner.");
      expect(said).toContain("Corner: the right end of left meets the left end of front.");
    },
  );

  it("finds the outer sides of an angled plan, and leaves walls within and walls told to be inner ones out", () => {
    const ifc = new IfcText();
    // Round an L, counter-clockwise seen from above; the outer side of each lies to the right of its run.
    const corners = [
      [0, 0],
      [9000, 0],
      [9000, 4000],
      [5000, 4000],
      [5000, 8000],
      [0, 8000],
    ] as const;
    corners.forEach((from, i) => {
      const to = corners[(i + 1) % corners.length]!;
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const along = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const;
      ifc.plainWall({ name: `w${i}`, from: [...from], along, length, thickness: 250 });
    });
    ifc.plainWall({ name: "partition", from: [3000, 250], along: [0, 1], length: 3500, thickness: 100 });
    ifc.plainWall({ name: "party", from: [20_000, 0], along: [1, 0], length: 3000, external: false });
    const { project } = begun(ifc.text());
    expect(project.faces.map(({ id, plan }) => [id, ...plan.from, ...plan.to])).toEqual(
      corners.map((from, i) => [`w${i}`, ...from, ...corners[(i + 1) % corners.length]!]),
    );
  });

  it("turns the plan so that the first wall runs along X, wherever on the map it lies, and tells azimuths by north", () => {
    const ifc = new IfcText("m", { north: [-1, 0] });
    const turn = Math.PI / 6;
    const along = [Math.cos(turn), Math.sin(turn)] as const;
    ifc.plainWall({
      name: "a1",
      from: [301_234_567.8, 5_123_456_789.1],
      along,
      length: 5000,
      external: true,
    });
    const { project, findings } = begun(ifc.text());
    expect(project.faces[0]!.plan).toMatchObject({ from: [0, 0], to: [5000, 0] });
    // Outward is (1/2, −√3/2), north (−1, 0) and so east (0, 1): 240° clockwise from north.
    expect(project.faces[0]!.azimuthDeg).toBe(240);
    // A wall by itself: nothing tells which side looks outside.
    expect(findings.map(({ says }) => says.key)).toEqual(["intake.ifc.side"]);
  });

  it("says that the side cannot be known where walls face each other over an open end, and is sure of a closed room", () => {
    const walls = (
      names: readonly string[],
      compass: { north?: readonly [number, number] } = { north: [0, 1] },
    ): string => {
      const ifc = new IfcText("mm", compass);
      const ends = {
        front: [0, 0, 1, 0, 6000],
        right: [6000, 0, 0, 1, 4000],
        back: [6000, 4000, -1, 0, 6000],
      };
      for (const [name, [x, y, dx, dy, length]] of Object.entries({ ...ends, left: [0, 4000, 0, -1, 4000] }))
        if (names.includes(name))
          ifc.plainWall({ name, from: [x!, y!], along: [dx!, dy!], length: length!, external: true });
      return ifc.text();
    };
    const unsure = (names: readonly string[], choice: WallChoice = {}) =>
      begun(walls(names), choice).findings.map(({ says }) => [says.key, says.values.walls]);
    expect(unsure(["front", "right", "back", "left"])).toEqual([]);
    expect(unsure(["front", "right", "back"])).toEqual([["intake.ifc.side", ["front", "right", "back"]]]);
    expect(unsure(["front", "back"])).toEqual([["intake.ifc.side", ["front", "back"]]]);
    // Whoever turns one has looked at it; the other is still unsure.
    expect(unsure(["front", "back"], { turned: ["front"] })).toEqual([["intake.ifc.side", ["back"]]]);
    expect(unsure(["front", "back"], { turned: ["front", "back"] })).toEqual([]);
    // A way through that nothing fills leaves the room open, a door does not.
    const holed = (fill?: { type: "IFCDOOR"; name: string }) => {
      const ifc = new IfcText("mm", { north: [0, 1] });
      const { front } = box(ifc);
      ifc.opening(front.wall, ...front.hole(400, 0, 5000, 2500), fill);
      return begun(ifc.text()).findings.map(({ says }) => says.key);
    };
    expect(holed({ type: "IFCDOOR", name: "D1" })).toEqual([]);
    expect(holed()).toEqual(["intake.ifc.side"]);
    // The azimuth of a face that stands settles it, where the model tells its north.
    const source = begun(walls(["front", "right", "back", "left"]));
    const into = (text: string) =>
      wallsInto(source, modelOf(text), { face: "back", walls: ["back"] }).findings.map(
        ({ says }) => says.key,
      );
    expect(into(walls(["front", "back"]))).toEqual([]);
    expect(into(walls(["front", "back"], {}))).toEqual(["intake.ifc.no-north", "intake.ifc.side"]);
  });

  it("makes one face of walls in one plane that touch, as those of two storeys", () => {
    const ifc = new IfcText();
    ifc.plainWall({ name: "ground", from: [0, 0, 0], along: [1, 0], length: 5000, external: true });
    const upper = ifc.plainWall({
      name: "upper",
      from: [1000, 0, 2600],
      along: [1, 0],
      length: 4000,
      external: true,
    });
    ifc.opening(upper.wall, ...upper.hole(500, 900, 1000, 1200));
    const { project } = begun(ifc.text());
    expect(project.faces).toHaveLength(1);
    expect(shape(project.faces[0]!)).toEqual({
      outline: [
        [0, 0],
        [5000, 0],
        [5000, 5200],
        [1000, 5200],
        [1000, 2600],
        [0, 2600],
      ],
      openings: [[1500, 3500, 2500, 4700]],
    });
  });

  it("takes the other side where it is told to: windows are mirrored then", () => {
    const ifc = new IfcText();
    const { wall, hole } = ifc.plainWall({
      name: "a1",
      from: [0, 0],
      along: [1, 0],
      length: 5000,
      external: true,
    });
    ifc.opening(wall, ...hole(500, 900, 1000, 1200));
    expect(shape(begun(ifc.text()).project.faces[0]!).openings).toEqual([[500, 900, 1500, 2100]]);
    const turned = begun(ifc.text(), { turned: ["a1"] }).project.faces[0]!;
    expect(shape(turned).openings).toEqual([[3500, 900, 4500, 2100]]);
    expect(turned.azimuthDeg).toBe(0);
  });

  it("takes the rectangle round a round window, and leaves a niche of the inner side out; both are told", () => {
    const ifc = new IfcText();
    const { wall, place } = ifc.plainWall({
      name: "a1",
      from: [0, 0],
      along: [1, 0],
      length: 5000,
      external: true,
    });
    const centre = ifc.add("IFCAXIS2PLACEMENT2D", ifc.point([0, 0]), "$");
    const circle = ifc.add("IFCCIRCLEPROFILEDEF", ".AREA.", "$", centre, ifc.mm(400));
    ifc.opening(
      wall,
      ifc.place(place, [2000, -10, 1500], [0, 1, 0], [1, 0, 0]),
      ifc.body("SweptSolid", ifc.swept(circle, 400)),
    );
    const niche = ifc.swept(ifc.rectangle(500, 500, [0, 0]), 200);
    ifc.opening(
      wall,
      ifc.place(place, [4000, 200, 1500], [0, 1, 0], [1, 0, 0]),
      ifc.body("SweptSolid", niche),
    );
    const { project, findings } = begun(ifc.text());
    expect(shape(project.faces[0]!).openings).toEqual([[1600, 1100, 2400, 1900]]);
    expect(told(findings)).toMatch(/no upright rectangle[\s\S]*does not go through the side/);
  });
});

describe("walls into a project", () => {
  const ifc = new IfcText();
  const { front } = box(ifc);
  const source = begun(ifc.text());
  ifc.opening(front.wall, ...front.hole(1000, 900, 1200, 1200));
  const model = modelOf(ifc.text());

  it("go where they are called as a face is, or into the face told, and nothing else changes", () => {
    const into = wallsInto(source, model, {});
    expect(
      into.ok && into.tells.map(({ key }) => key).filter((key) => key !== "intake.change.outline-stays"),
    ).toEqual(["intake.change.new"]);
    const back = wallsInto(source, model, { face: "a", walls: ["front"] });
    const read = back.ok ? readDocument(back.document, "house") : undefined;
    expect(read?.ok && read.project.faces.map(({ openings }) => openings.length)).toEqual([0, 0, 1, 0]);
  });

  it.each([
    [{ face: "front", walls: ["front", "left"] }, "takes one outer side, and the walls give 2"],
    [{ face: "cellar", walls: ["front"] }, "called as the walls cellar are"],
    [{ walls: ["Back wall:1"] }, "called as the walls a are"],
    [{ walls: ["roof"] }, "no wall called “roof”. Name walls of the file: front, right, Back wall:1, left."],
  ])("%j is refused", (choice, says) => {
    const faces = source.project.faces.filter(({ id }) => id !== "a");
    const project = { ...source.project, faces, corners: [] };
    const into = wallsInto({ project, document: source.document }, model, choice);
    expect(!into.ok && told(into.findings)).toContain(says);
  });
});

describe("what cannot be used is refused by entity, field and value, and nothing is taken", () => {
  const sound = (): IfcText => {
    const ifc = new IfcText();
    const { wall, hole } = ifc.plainWall({
      name: "a1",
      from: [0, 0],
      along: [1, 0],
      length: 5000,
      external: true,
    });
    ifc.opening(wall, ...hole(500, 900, 1000, 1200));
    return ifc;
  };
  const swapped = (from: RegExp, to: string): string => {
    const text = sound().text();
    const changed = text.replace(from, to);
    expect(changed).not.toBe(text);
    return changed;
  };
  it.each([
    ["prose", () => "Dear sir,\nplease find", "(ISO-10303-21) in line 1"],
    ["a break", () => sound().text().slice(0, 900), "breaks off at line"],
    ["an open quotation mark", () => swapped(/'a1'/, "'a1"), "breaks off at line"],
    ["a line that is none", () => swapped(/#3= IFC/, "3 IFC"), "line 10: an entity should stand here"],
    ["another schema", () => swapped(/IFC4/, "CONFIG_CONTROL_DESIGN"), "schema “CONFIG_CONTROL_DESIGN”"],
    [
      "no unit",
      () => swapped(/\.LENGTHUNIT\./, ".AREAUNIT."),
      "unit of length (IfcUnitAssignment, LENGTHUNIT)",
    ],
    ["no walls", () => swapped(/IFCWALL\(/, "IFCSLAB("), "holds no wall"],
    [
      "a depth of nothing",
      () => swapped(/,2600\.\);/, ",0.);"),
      /Depth of (#\d+) \(IFCEXTRUDEDAREASOLID\) is 0, which cannot be used\. Mend \1/,
    ],
    [
      "a reference to nothing",
      () => swapped(/IFCEXTRUDEDAREASOLID\(#\d+/, "IFCEXTRUDEDAREASOLID(#999"),
      /SweptArea of #\d+ \(IFCEXTRUDEDAREASOLID\) is #999/,
    ],
    [
      "a length in words",
      () => swapped(/,300\.\);/, ",'thick');"),
      /YDim of #\d+ \(IFCRECTANGLEPROFILEDEF\) is 'thick'/,
    ],
    [
      "a profile with round corners",
      () => swapped(/IFCRECTANGLEPROFILEDEF\((.*)\);/, "IFCROUNDEDRECTANGLEPROFILEDEF($1,20.);"),
      "(IFCROUNDEDRECTANGLEPROFILEDEF) is of a kind that is not read. Draw the section",
    ],
    [
      "a placement that stands in itself",
      () => swapped(/(#\d+)= IFCLOCALPLACEMENT\(#\d+/, "$1= IFCLOCALPLACEMENT($1"),
      /PlacementRelTo of (#\d+) \(IFCLOCALPLACEMENT\) is \1/,
    ],
    [
      "a wall that leans",
      () => swapped(/\(\(0\.,0\.,1\.\)\);(\n#\d+= IFCEXTRUDED)/, "((0.,0.5,1.));$1"),
      "does not stand upright",
    ],
  ])("%s", (_, text, says) => {
    const words = refusal(text());
    if (typeof says === "string") expect(words).toContain(says);
    else expect(words).toMatch(says);
    expect(words).toContain("house.ifc");
  });

  it("a wall that turns a corner is no flat one, and openings over each other or over a step are named", () => {
    const ifc = new IfcText();
    const angled = ifc.closed([
      [0, 0],
      [3000, 0],
      [3000, 2500],
      [2700, 2500],
      [2700, 300],
      [0, 300],
    ]);
    ifc.wall("angled", ifc.place(ifc.world, [0, 0, 0]), ifc.body("SweptSolid", ifc.swept(angled, 2600)));
    expect(refusal(ifc.text())).toContain("not bounded by two flat sides");
    const twice = sound();
    const { wall, hole } = twice.plainWall({
      name: "b1",
      from: [0, 9000],
      along: [1, 0],
      length: 5000,
      external: true,
    });
    twice.opening(wall, ...hole(500, 900, 1000, 1200));
    const second = twice.opening(wall, ...hole(900, 900, 1000, 1200));
    expect(refusal(twice.text())).toContain(
      `wall b1: opening ${second} IFCOPENINGELEMENT lies over another one`,
    );
    // What is not chosen hinders nothing.
    expect(begun(twice.text(), { walls: ["a1"] }).project.faces).toHaveLength(1);
  });
});
