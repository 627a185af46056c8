/** The ways to mend a finding, as the command line tells them: in words, and as edits that --edit takes. */
import { afterAll, describe, expect, it } from "vitest";
import type { FindingJson } from "../../src/output/json/shapes/finding.ts";
import { bench } from "../helpers/cli.ts";

const desk = bench();
afterAll(() => desk.clear());

const DEMO = "atelier-bouleau.outerleaf.json";
const boards = JSON.parse(desk.read(DEMO)).claddings.findIndex(
  ({ kind }: { kind: string }) => kind === "boards",
);
/** One width that no whole count of brings to the sills: see the ways to mend an impossible rod in rods-mends. */
const impossible = [
  { op: "replace", path: `/claddings/${boards}/widths`, value: [88] },
  { op: "replace", path: `/claddings/${boards}/gapBand`, value: [8, 12] },
];
desk.write("impossible.json", impossible);

async function refusedRod(
  command: string,
  edit: unknown,
  ...more: string[]
): Promise<FindingJson | undefined> {
  desk.write("edit.json", edit);
  const { out } = await desk.run(command, DEMO, "--edit", "edit.json", "--json", ...more);
  const { findings } = JSON.parse(out) as { findings: FindingJson[] };
  return findings.find(({ code, outcome }) => code === "S001" && outcome === "fail");
}

it.each(["set-out", "prove", "issue"])(
  "%s tells what brings zones that stand apart into one plane",
  async (command) => {
    const document = JSON.parse(desk.read(DEMO));
    const packed = document.buildUps.findIndex(({ layers }: { layers: { kind: string }[] }) =>
      layers.some(({ kind }) => kind === "packer"),
    );
    const at = document.buildUps[packed].layers.findIndex(({ kind }: { kind: string }) => kind === "packer");
    const apart = [{ op: "remove", path: `/buildUps/${packed}/layers/${at}` }];
    const step = async (edit: unknown): Promise<FindingJson | undefined> => {
      desk.write("apart.json", edit);
      const to = command === "issue" ? ["--to", "apart"] : [];
      const { out } = await desk.run(command, DEMO, ...to, "--edit", "apart.json", "--json");
      const { findings } = JSON.parse(out) as { findings: FindingJson[] };
      return findings.find(({ code, outcome }) => code === "S007" && outcome === "fail");
    };
    const found = await step(apart);
    const [first] = found?.choices ?? [];
    // By hand: boards of 20 on 25 against sheets of 8 and a gasket of 1 on 38 is 2 mm.
    expect(found?.demand).toBe(2);
    expect(first?.says).toBe(
      `${document.buildUps[packed].id} of b25x64, packed out by 2 mm. Then look at: packers on soft insulation.`,
    );
    expect(found?.hint).toBe(first?.says);
    if (command === "prove") expect(await step([...apart, ...(first?.edit ?? [])])).toBeUndefined();
  },
);

describe.each(["set-out", "prove"])("the choices of a finding told by %s", (command) => {
  it("are gone, finding and all, once the edit of one of them is handed to --edit", async () => {
    const finding = await refusedRod(command, impossible);
    const written = finding?.choices?.filter(({ edit }) => edit !== undefined) ?? [];
    expect(written.length).toBeGreaterThan(2);
    expect(finding?.hint).toBe(finding?.choices?.[0]?.says);
    expect(finding?.edit).toEqual(finding?.choices?.[0]?.edit);
    for (const { says, edit = [] } of written.slice(0, 3))
      expect([says, await refusedRod(command, [...impossible, ...edit])]).toEqual([says, undefined]);
  });

  it("are said in the reader's language under one key", async () => {
    const english = (await refusedRod(command, impossible))?.choices ?? [];
    const french = (await refusedRod(command, impossible, "--language", "fr"))?.choices ?? [];
    expect(french.map(({ key }) => key)).toEqual(english.map(({ key }) => key));
    expect(french.some(({ says }, i) => says === english[i]?.says)).toBe(false);
  });

  it("are printed short: two besides the hint, and how many more there are", async () => {
    const { out } = await desk.run(command, DEMO, "--edit", "impossible.json");
    const choices = (await refusedRod(command, impossible))?.choices ?? [];
    const [first, second, third, fourth] = choices.map(({ says }) => says);
    expect(out).toContain(
      [
        `    → ${first}`,
        `      or: ${second}`,
        `      or: ${third}`,
        `      … and ${choices.length - 3} other way`,
      ].join("\n"),
    );
    expect(fourth).toBeDefined();
    expect(out).not.toContain(fourth);
  });
});
