/** P030 drainage path, P031 flashings, P032 splash, P033 driven rain, P043 laps of the membrane. */
import { describe, expect, it } from "vitest";
import { drainagePath } from "../../src/proof/drainage-path.ts";
import { drivenRain } from "../../src/proof/driven-rain.ts";
import { flashingWater } from "../../src/proof/flashing-water.ts";
import { membraneLaps } from "../../src/proof/membrane-laps.ts";
import { splashHeight } from "../../src/proof/splash-height.ts";
import { type MutableFacade, proofFixture } from "../helpers/proof-fixture.ts";

type Changed = MutableFacade["faces"][number];

/** Lays a batten of the boards' zone on the membrane (z 51) with the given size. */
const batten = (x: [number, number], y: [number, number], z: [number, number] = [51, 78]) => ({
  facade: ({ faces: [face] }: MutableFacade) => {
    const piece = face!.pieces.find(({ mark }) => mark === "FB0")!;
    piece.z = z;
    piece.outline = [
      [x[0], y[0]],
      [x[1], y[0]],
      [x[1], y[1]],
      [x[0], y[1]],
    ];
  },
});

describe("P030 drainage path", () => {
  it("passes where all timber on the membrane stands upright", () => {
    const findings = drainagePath(proofFixture(batten([0, 64], [0, 400])));
    expect(findings.map(({ outcome, where }) => [outcome, where.zone])).toEqual([
      ["pass", "boards"],
      ["pass", "sheets"],
    ]);
  });

  it("fails on a batten laid level over a head, and names it", () => {
    const [boards] = drainagePath(proofFixture(batten([290, 910], [1622, 1686])));
    expect(boards).toMatchObject({
      code: "P030",
      outcome: "fail",
      where: { zone: "boards", marks: ["FB0"] },
      demand: 620,
      limit: 150,
    });
  });

  it("lets a short packer and a rail off the membrane be", () => {
    expect(drainagePath(proofFixture(batten([0, 64], [0, 60])))[0]).toMatchObject({
      outcome: "pass",
      demand: 64,
    });
    expect(drainagePath(proofFixture(batten([0, 1000], [0, 64], [53, 78])))[0]).toMatchObject({
      outcome: "pass",
    });
  });
});

/** The window of the wall with a head flashing of the given section (z from the membrane, y over the window's head). */
const flashed = (section: { fall: number; front: number; upstand: number; top?: number }) => ({
  facade: ({ faces: [face] }: MutableFacade) => {
    const { fall, front, upstand, top = 1612 } = section;
    const onFace: Changed = face!;
    onFace.openings = [{ id: "W1", kind: "window", region: { x: [300, 900], y: [1000, 1600] } }];
    onFace.pieces.push({
      ...onFace.pieces[0]!,
      mark: "F-Hh-W1",
      kind: "flashing",
      outline: [
        [292, top - fall - 8],
        [908, top - fall - 8],
        [908, top],
        [292, top],
      ],
      profile: [
        [51, top + upstand],
        [51, top],
        [front, top - fall],
        [front, top - fall - 8],
      ],
      fixings: [],
    });
  },
});

describe("P031 flashings", () => {
  it("passes a slope of 6 %, an upstand of 50 mm and a drip of 10 mm", () => {
    const [shape, over] = flashingWater(proofFixture(flashed({ fall: 3.42, front: 108, upstand: 50 })));
    expect(shape).toMatchObject({ outcome: "pass", provisional: false, where: { opening: "W1" } });
    expect(over).toMatchObject({ code: "P031", where: { marks: ["F-Hh-W1"] } });
  });

  it.each([
    ["slope", { fall: 1, front: 108, upstand: 50 }],
    ["drip", { fall: 3.42, front: 102, upstand: 50 }],
    ["upstand", { fall: 3.42, front: 108, upstand: 20 }],
  ])("fails on its %s", (part, section) => {
    const [shape] = flashingWater(proofFixture(flashed(section)));
    expect(shape).toMatchObject({
      outcome: "fail",
      says: { values: { lacking: [{ key: `proof.flashing.part-${part}` }] } },
      working: { inputs: [{ meaning: { key: `proof.flashing.part-${part}` } }, {}] },
    });
  });

  it("measures the cladding over it", () => {
    const close = flashed({ fall: 3.42, front: 108, upstand: 50 });
    const [, over] = flashingWater(
      proofFixture({
        facade: (facade) => {
          close.facade(facade);
          const board = facade.faces[0]!.pieces.find(({ mark }) => mark === "F3")!;
          board.outline = board.outline.map(([x, y]) => [x, y - 238 + 1615]);
        },
      }),
    );
    expect(over).toMatchObject({
      outcome: "attention",
      demand: 3,
      limit: 6,
      where: { marks: ["F3", "F-Hh-W1"] },
    });
  });

  it("says where a window has none", () => {
    const [missing] = flashingWater(
      proofFixture({
        facade: ({ faces: [face] }) => {
          face!.openings = [{ id: "W1", kind: "window", region: { x: [300, 900], y: [1000, 1600] } }];
        },
      }),
    );
    expect(missing).toMatchObject({ outcome: "attention", where: { opening: "W1" } });
  });
});

describe("P032 splash", () => {
  const over = (cover: "gravel" | "paving" | "deck", width?: number) =>
    splashHeight(
      proofFixture({
        project: ({ faces: [face] }) => {
          face!.splash = { cover, ...(width === undefined ? {} : { width }) };
        },
        facade: ({ faces: [face] }) => {
          face!.ground = [[0, -160]];
        },
      }),
    )[0];

  it("cannot tell without the cover at the wall's foot", () => {
    expect(splashHeight(proofFixture())[0]).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/faces/0/splash" },
    });
  });

  it("asks less over a gravel strip that is wide enough, by one source; another asks more", () => {
    expect(over("gravel", 200)).toMatchObject({ outcome: "attention", demand: 160, limit: 175 });
    expect(over("gravel", 100)).toMatchObject({ outcome: "attention", demand: 160, limit: 300 });
    expect(over("gravel")).toMatchObject({ limit: 300 });
  });

  it("holds paving to the plain rule as well, and a deck to rules on decks", () => {
    expect(over("paving")).toMatchObject({ outcome: "attention", limit: 300 });
    expect(over("deck")).toMatchObject({ outcome: "pass", limit: 51 });
  });
});

describe("P033 driven rain", () => {
  const given = (fromDeg: number, meanMPerS = 4) =>
    proofFixture({
      project: ({ site }) => {
        site.climate = {
          rainfallMm: { values: [50, 50, 50, 50, 100, 100, 150, 150, 100, 100, 50, 50], basis: "given" },
          wind: { meanMPerS, fromDeg, basis: "given" },
        };
      },
    });

  it("cannot tell without rain and wind", () => {
    expect(drivenRain(proofFixture())).toMatchObject([
      { outcome: "cannot evaluate", where: { path: "/site/climate/wind" } },
    ]);
  });

  it("takes all of it square on, half at 60°, none from behind: 1 m of rain at 4 m/s", () => {
    expect(drivenRain(given(180))[0]).toMatchObject({ outcome: "attention", demand: 4, limit: 3 });
    const [slanting] = drivenRain(given(120));
    expect(slanting).toMatchObject({ outcome: "pass", provisional: true });
    expect(slanting?.demand).toBeCloseTo(2, 9);
    expect(drivenRain(given(0))[0]).toMatchObject({ outcome: "pass", demand: 0 });
  });

  it("calls 7 m²/s severe", () => {
    expect(drivenRain(given(180, 8))[0]).toMatchObject({
      says: { key: "proof.rain.severe" },
      demand: 8,
      limit: 7,
    });
  });
});

describe("P043 laps of the membrane", () => {
  const lapped = (level: number, upright: number) =>
    membraneLaps(
      proofFixture({
        project: ({ buildUps }) => {
          for (const layer of buildUps.flatMap(({ layers }) => layers))
            if (layer.kind === "membrane") layer.laps = { level, upright };
        },
      }),
    );

  it("cannot tell until they are given, for each build-up in use", () => {
    expect(membraneLaps(proofFixture()).map(({ outcome, where }) => [outcome, where.path])).toEqual([
      ["cannot evaluate", "/buildUps/0/layers/1/laps"],
      ["cannot evaluate", "/buildUps/1/layers/0/laps"],
    ]);
  });

  it("NHBC 6.2.13: 100 mm level and 150 mm upright", () => {
    expect(lapped(100, 150)[0]).toMatchObject({ outcome: "pass", provisional: false });
    expect(lapped(150, 100)[0]).toMatchObject({ outcome: "attention", demand: 100, limit: 150 });
    expect(lapped(60, 140)[0]).toMatchObject({ outcome: "attention", demand: 60, limit: 100 });
  });
});
