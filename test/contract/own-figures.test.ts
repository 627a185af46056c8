/**
 * Every figure of the catalogue that nobody has confirmed is either replaced by the project's own, and then felt by what reads
 * it, or read by no rule. Each figure that can be replaced is tried by itself on the wall of the rules of proof.
 */
import { describe, expect, it } from "vitest";
import { catalogueWith, figureFault, figureKeys, type OwnFigure } from "../../src/catalogue/own-figures.ts";
import { type SourcedRecord, sourcedRecords, unconfirmed } from "../../src/catalogue/records.ts";
import { chosenRules } from "../../src/codes/chosen-rules.ts";
import { demandsOf } from "../../src/codes/demands.ts";
import { structureDemand } from "../../src/codes/packs/index.ts";
import { splashRules } from "../../src/codes/splash.ts";
import { CAVITY_RULE_SETS } from "../../src/project/schema/cladding.ts";
import type { Project } from "../../src/project/schema/project.ts";
import { STRUCTURE_CODES } from "../../src/project/schema/wind.ts";
import type { DraftPiece } from "../../src/setout/draft.ts";
import { massOf } from "../../src/setout/masses.ts";
import { finishLines } from "../../src/takeoff/finish.ts";
import { boardsOf, proofFixture } from "../helpers/proof-fixture.ts";
import { WINDS } from "../helpers/winds.ts";

const keyOf = ({ file, path }: SourcedRecord): string => `${file}.${path}`;
const records = new Map(sourcedRecords().map((entry) => [keyOf(entry), entry.record]));
const replaceable = new Set(figureKeys());

/** Unconfirmed figures that nothing reads, with what the project file gives in their place. */
const NEVER_READ: readonly { readonly keys: RegExp; readonly because: string }[] = [
  { keys: /^climates\.climates\./, because: "the project's own site and climate" },
  { keys: /^climates\.outdoorMoisture\./, because: "worked out from the project's own climate" },
  { keys: /^sheet-materials\./, because: "the cladding's own data sheet" },
  { keys: /^stock\./, because: "the project's own stock, saw and pile" },
  { keys: /^straightness\./, because: "the project's own survey" },
  { keys: /^proportion-rules\.openJoints\./, because: "the cladding's own gap band" },
  {
    keys: /^clearances\.clearances\.[a-z-]+\.figures\.1$/,
    because: "a second value beside the one that is read",
  },
  {
    keys: /^species\.rules\.(?:coefficientAlongGrain|expansionAlongGrain)$/,
    because: "boards are not judged along the grain",
  },
  {
    keys: /^species\.species\.[a-z-]+\.(?:shrinkageRadial|coefficientRadial|specificGravityGreen|modulusAt12)$/,
    because: "boards are taken as flat-sawn, dry and not as beams",
  },
  {
    keys: /^species\.species\.[a-z-]+\.(?:coefficientTangential|densityAt12)$/,
    because: "the same wood's shrinkage or specific gravity is read before it",
  },
];

const OTHER_WORD = "heartwood-very-resistant";

/** Another value of the same form, basis and unit as the file would have it. */
function another(key: string): OwnFigure {
  const record = records.get(key);
  if (record === undefined || "corrosionClass" in record) throw new Error(key);
  if ("key" in record) {
    return { value: record.key === OTHER_WORD ? "heartwood-not-resistant" : OTHER_WORD, source: "own" };
  }
  if (!("value" in record)) throw new Error(key);
  const { value, unit } = record;
  if (Array.isArray(value)) throw new Error(key);
  const more =
    typeof value === "number"
      ? value * 0.9
      : Object.fromEntries(Object.entries(value).map(([bound, one]) => [bound, (one ?? 0) * 0.9]));
  return { value: more, source: "own", ...(unit === "1" ? {} : { unit }) };
}

const SPLASHES = [
  { cover: "gravel", width: 300 },
  { cover: "gravel" },
  { cover: "paving" },
  { cover: "deck" },
] as const;

const DRAFT = {
  outline: [
    [0, 0],
    [1000, 0],
    [1000, 100],
    [0, 100],
  ],
  holes: [],
  z: [0, 20],
};

/** All that is read of the catalogue on the wall, with its boards of one wood. */
function felt(species: string, figures?: Project["figures"]): string {
  const { project, facade } = proofFixture({
    project: (one) => {
      Object.assign(boardsOf(one), { species, lots: undefined, finish: "two oil coats" });
      one.site.climate?.snowDepthMm?.values.splice(0, 2, 28, 100);
      if (figures) one.figures = figures;
    },
  });
  const { figures: _said, ...demands } = demandsOf(project);
  const chosen = CAVITY_RULE_SETS.map((cavityRules) =>
    chosenRules({ ...project, limits: { ...project.limits, cavityRules } }),
  );
  const packs = STRUCTURE_CODES.flatMap((code) =>
    (["dry", "wet"] as const).map((timberService) =>
      structureDemand({
        ...project,
        site: { ...project.site, ...WINDS[code] },
        limits: { ...project.limits, timberService },
      }),
    ),
  );
  const splashes = SPLASHES.map((splash) => splashRules(project, splash));
  const mass = massOf(project, { ...DRAFT, material: species } as unknown as DraftPiece);
  return JSON.stringify([demands, chosen, packs, splashes, mass, finishLines(project, facade)]);
}

/** The wood that a figure is of; of the rules for all, one that lacks figures of its own. */
const speciesOf = (key: string): string =>
  key === "species.rules.fibreSaturation"
    ? "white-spruce"
    : (/^species\.species\.([^.]+)/.exec(key)?.[1] ?? "moonwood");

describe("figures that nobody has confirmed", () => {
  it("can be replaced, or are read by nothing", () => {
    const open = unconfirmed().map(keyOf);
    const unread = open.filter((key) => !replaceable.has(key));
    expect(open.length).toBeGreaterThan(unread.length);
    expect(unread.filter((key) => !NEVER_READ.some(({ keys }) => keys.test(key)))).toEqual([]);
  });

  it("are refused where nothing reads them", () => {
    for (const [key, record] of records) {
      if (replaceable.has(key) || !("value" in record) || Array.isArray(record.value)) continue;
      expect({ key, fault: figureFault(key, another(key))?.kind }).toEqual({ key, fault: "unread" });
    }
  });

  it("no reason is left over", () => {
    const unread = unconfirmed()
      .map(keyOf)
      .filter((key) => !replaceable.has(key));
    expect(NEVER_READ.filter(({ keys }) => !unread.some((key) => keys.test(key)))).toEqual([]);
  });
});

describe("a figure of the project's own", () => {
  it.each([...replaceable])("%s is read in the catalogue's place", (key) => {
    const wood = speciesOf(key);
    const own = felt(wood, { [key]: { ...another(key) } });
    expect(own).not.toBe(felt(wood));
  });

  it("changes no other, and not the catalogue", () => {
    const before = JSON.stringify(catalogueWith(undefined));
    for (const key of replaceable) {
      const changed = JSON.stringify(catalogueWith({ [key]: another(key) }));
      expect(changed.split('"basis":"given"').length, key).toBe(2);
      expect(changed, key).toContain(`"source":"own","basis":"given"`);
    }
    expect(JSON.stringify(catalogueWith(undefined))).toBe(before);
  });
});
