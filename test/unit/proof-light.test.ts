/** P020 and P021 on the hand-made wall, and what the light of a zone leaves out. */
import { describe, expect, it } from "vitest";
import type { Project } from "../../src/project/schema/project.ts";
import { createSunMemo } from "../../src/proof/light/sun-memo.ts";
import { lightSite, zoneLights } from "../../src/proof/light/zone-light.ts";
import { lightDose } from "../../src/proof/light-dose.ts";
import { lightOpenShare } from "../../src/proof/light-open-share.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { proofFixture } from "../helpers/proof-fixture.ts";

type Membrane = NonNullable<Project["limits"]["membrane"]>;

function withLimit(value: number, basis: "given" | "typical" = "given") {
  return proofFixture({
    project: ({ limits }) => {
      Object.assign(limits.membrane as Membrane, { maxUvPerYear: { value, basis } });
    },
  });
}

function doseOf(zone: string, context = proofFixture()) {
  const found = lightDose(context).find(({ where }) => where.zone === zone);
  if (!found) throw new Error(`nothing said of ${zone}`);
  return found;
}

describe("P021 while bare", () => {
  const bare = (value: number, weeks: number | undefined = 6) => {
    const context = proofFixture({
      project: ({ limits, site }) => {
        Object.assign(limits.membrane as Membrane, { maxUvUncovered: { value, basis: "given" } });
        Object.assign(site, { weeksUncovered: weeks });
      },
    });
    const found = lightDose(context).filter(({ working }) => working?.formula === "n·H_w ≤ H_max");
    return { context, found };
  };

  it("as many weeks of the bare wall's brightest month, worked from the wall's own months", () => {
    const { context, found } = bare(500);
    const month = Math.max(...(zoneLights(context)?.flatMap(({ bare: { uvMJ } }) => uvMJ) ?? []));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ code: "P021", outcome: "pass", provisional: true, limit: 500 });
    // A month of 30 or 31 days.
    expect(found[0]?.demand).toBeGreaterThanOrEqual((6 * 7 * month) / 31 - 1e-9);
    expect(found[0]?.demand).toBeLessThanOrEqual((6 * 7 * month) / 30 + 1e-9);
  });

  it("fails over the limit, and tells in how many weeks to cover it", () => {
    const [over] = bare(10).found;
    expect(over).toMatchObject({ outcome: "fail", where: { path: "/limits/membrane/maxUvUncovered" } });
    const weeks = over?.hint?.values.weeks as number;
    expect(weeks / 6).toBeCloseTo(10 / (over?.demand ?? 0), 9);
  });

  it("cannot tell without a programme, and says nothing without a limit", () => {
    const context = proofFixture({
      project: ({ limits, site }) => {
        Object.assign(limits.membrane as Membrane, { maxUvUncovered: { value: 10, basis: "given" } });
        delete site.weeksUncovered;
      },
    });
    expect(lightDose(context).at(-1)).toMatchObject({
      outcome: "cannot evaluate",
      where: { path: "/site/weeksUncovered" },
    });
    expect(
      lightDose(proofFixture()).every(({ where }) => where.path === "/limits/membrane/maxUvPerYear"),
    ).toBe(true);
  });
});

describe("P021", () => {
  it("passes under the stated dose, provisionally: the shares of ultraviolet are typical", () => {
    const finding = doseOf("boards", withLimit(40));
    expect(finding).toMatchObject({ code: "P021", outcome: "pass", provisional: true, limit: 40 });
    expect(finding.ratio).toBeLessThan(1);
    expect(finding.working?.inputs.map(({ symbol }) => symbol)).toEqual([
      "g",
      "t",
      "b",
      "c",
      "H_b",
      "H_s",
      "H_g",
      "H_max",
    ]);
  });

  it("fails over it, and tells the widest gap at each bevel, the widest first", () => {
    const finding = doseOf("boards", withLimit(6));
    expect(finding.outcome).toBe("fail");
    const said = (finding.choices ?? []).map(({ says }) => say(says, ENGLISH_MM));
    expect(said.length).toBeGreaterThanOrEqual(2);
    expect(said[0]).toContain("30°");
    expect(finding.hint).toEqual(finding.choices?.[0]?.says);
  });

  it("says so where no gap that drains is narrow enough", () => {
    const finding = doseOf("sheets", withLimit(0.5));
    expect(finding.outcome).toBe("fail");
    expect(finding.choices).toBeUndefined();
    expect(finding.hint?.key).toBe("light.dose.no-gap");
  });

  it("asks for attention, and never passes, where no dose is stated", () => {
    const finding = doseOf("boards");
    expect(finding.outcome).toBe("attention");
    expect(finding.limit).toBeUndefined();
  });

  it("cannot be evaluated where neither snow nor ground is told", () => {
    const context = proofFixture({
      project: ({ site }) => {
        delete site.climate?.snowDepthMm;
      },
    });
    expect(lightDose(context)).toMatchObject([
      { outcome: "cannot evaluate", where: { path: "/site/climate/snowDepthMm" } },
    ]);
  });

  it("takes the ground that the project states in place of the snow", () => {
    const stated = (share: number) =>
      proofFixture({
        project: ({ site }) => {
          if (site.climate) {
            const values = new Array<number>(12).fill(share);
            site.climate.groundUvReflectance = { values, basis: "given" };
          }
        },
      });
    const dark = doseOf("boards", stated(0)).working?.inputs.find(({ symbol }) => symbol === "H_g");
    const light = doseOf("boards", stated(0.9)).working?.inputs.find(({ symbol }) => symbol === "H_g");
    expect(dark?.value).toBe(0);
    expect(light).toMatchObject({ basis: "given" });
    expect(light?.value).toBeGreaterThan(0);
  });
});

describe("P020", () => {
  it("opens the gaps between boards by their shrinkage, and leaves sheets to the rule on joints as fixed", () => {
    const findings = lightOpenShare(proofFixture());
    expect(findings.map(({ where }) => where.zone)).toEqual(["boards"]);
    const [finding] = findings;
    const area = (symbol: string) =>
      finding?.working?.inputs.find((input) => input.symbol === symbol)?.value ?? Number.NaN;
    expect(area("A_g")).toBeGreaterThan(0);
    expect(finding?.demand).toBeCloseTo((100 * (area("A_j") + area("A_g"))) / area("A"), 9);
  });

  it("fails over the stated share", () => {
    const context = proofFixture({
      project: ({ limits }) => {
        if (limits.membrane) limits.membrane.maxOpenPercent.value = 1;
      },
    });
    expect(lightOpenShare(context)).toMatchObject([{ code: "P020", outcome: "fail" }]);
  });
});

describe("the light of a zone", () => {
  const eaves = (depth: number) =>
    proofFixture({
      project: ({ faces }) => {
        const [face] = faces;
        if (face) face.eaves = { depth, y: 2600 };
      },
    });

  it("shrinks under eaves, on the bare wall at once, behind slots once they hide what the slots let in", () => {
    const boards = (context = proofFixture()) => {
      const found = zoneLights(context)?.find(({ view }) => view.zone.id === "boards");
      if (!found) throw new Error("no light on boards");
      return { bare: found.bare.uvMJYear, average: found.average.uvMJYear };
    };
    const [open, near, deep, porch] = [
      boards(),
      boards(eaves(500)),
      boards(eaves(1500)),
      boards(eaves(20_000)),
    ];
    expect(near.bare).toBeLessThan(open.bare);
    expect(deep.bare).toBeLessThan(near.bare);
    // The cut-off of these slots is 13°: shallow eaves stand over it.
    expect(near.average).toBeCloseTo(open.average, 9);
    expect(porch.average).toBeLessThan(open.average);
    expect(porch.average).toBeGreaterThan(0);
  });

  it("leaves out joints that a batten backs from end to end", () => {
    const context = proofFixture();
    const sheets = zoneLights(context)?.find(({ view }) => view.zone.id === "sheets");
    const covered = context.zones.map((view) => ({
      ...view,
      // A face with other battens is another face.
      face: { ...view.face },
      battens: view.joints.map(({ region }) => ({
        ...(view.pieces[0] as (typeof view.pieces)[number]),
        outline: region,
      })),
    }));
    expect(sheets?.worst).toBeDefined();
    expect(zoneLights({ ...context, zones: covered })?.every(({ worst }) => worst === undefined)).toBe(true);
  });

  it("goes deeper between two battens that stand beside an upright joint", () => {
    const context = proofFixture();
    const beside = context.zones.map((view) => ({
      ...view,
      face: { ...view.face },
      battens: view.joints.flatMap(({ region }) => {
        const xs = region.map(([x]) => x);
        const ys = region.map(([, y]) => y);
        return [
          [Math.min(...xs) - 64, Math.min(...xs)],
          [Math.max(...xs), Math.max(...xs) + 64],
        ].map(([from = 0, to = 0]) => ({
          ...(view.pieces[0] as (typeof view.pieces)[number]),
          outline: [
            [from, Math.min(...ys)],
            [to, Math.min(...ys)],
            [to, Math.max(...ys)],
            [from, Math.max(...ys)],
          ] as [number, number][],
        }));
      }),
    }));
    const upright = (zones: typeof context.zones) =>
      zoneLights({ ...context, zones })
        ?.flatMap(({ slots }) => slots)
        .find(({ across }) => across === "upright")?.slot;
    const open = upright(context.zones);
    const channel = upright(beside);
    expect(open?.cavityMm).toBeGreaterThan(0);
    expect(channel).toMatchObject({
      cavityMm: 0,
      thicknessMm: (open?.thicknessMm ?? 0) + (open?.cavityMm ?? 0),
    });
  });

  it("makes the sun of a place once, and again for another", () => {
    const memo = createSunMemo({ places: 1 });
    const site = lightSite(proofFixture().demands);
    if (!site) throw new Error("no site");
    const first = memo.recall(site);
    expect(memo.recall({ ...site })).toBe(first);
    expect(memo.recall({ ...site, latitudeDeg: 60 })).not.toBe(first);
    expect(memo.recall(site)).not.toBe(first);
    expect(memo.recall(site).table.beam).toEqual(first.table.beam);
  });
});
