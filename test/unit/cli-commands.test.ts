/** What the commands do and print when all is well. */
import { createHash } from "node:crypto";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { COMMANDS } from "../../src/cli/commands.ts";
import { flagOf } from "../../src/cli/options.ts";
import { bench, EXAMPLES } from "../helpers/cli.ts";

const desk = bench();
afterAll(() => desk.clear());

const DEMO = "atelier-bouleau.outerleaf.json";

describe.each(EXAMPLES)("%s as text", (file) => {
  it.each(["check", "set-out", "prove", "cut", "takeoff"])("%s", async (command) => {
    for (const language of file === DEMO ? ["en", "fr"] : ["fr"]) {
      const { exit, out, err } = await desk.run(command, file, "--language", language);
      expect(exit).toBeLessThan(2);
      expect(err).toBe("");
      expect(out.length).toBeGreaterThan(20);
      expect(out).not.toMatch(/undefined|\[object|NaN|\[\w+\.[\w.-]+\]/);
    }
  });
});

describe("help", () => {
  it("shows the path of a job, and each command's sentence, example and what it writes", async () => {
    const { exit, out } = await desk.run("--help");
    expect(exit).toBe(0);
    for (const { name } of COMMANDS) expect(out).toContain(`\n  ${name} `);
    for (const { name, example, options } of COMMANDS) {
      const { out: own } = await desk.run(name, "--help");
      expect(own).toContain(example);
      expect(own).toMatch(/Writes /);
      for (const option of options) expect(own).toContain(flagOf(option));
      expect((await desk.run("help", name)).out).toBe(own);
      const { out: french } = await desk.run(name, "--help", "--language", "fr");
      expect(french).toContain("Par exemple :");
      expect(french).not.toContain("[cli.");
    }
  });

  it("is in the language of the system where none is asked for", async () => {
    const french = bench({ language: "fr" });
    expect((await french.run("--help")).out).toContain("Le chemin d’un chantier");
    french.clear();
  });

  it("tells the version", async () => {
    expect((await desk.run("--version")).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

describe("new", () => {
  it("writes a project that can be used, in the language and units asked for, edited as asked", async () => {
    desk.write("title.json", [{ op: "replace", path: "/title", value: "Shed" }]);
    const argv = ["shed.json", "--language", "fr", "--units", "feet-inch", "--edit", "title.json"];
    const { exit, out } = await desk.run("new", ...argv);
    expect(exit).toBe(0);
    expect(out).toContain("shed.json");
    expect(JSON.parse(desk.read("shed.json"))).toMatchObject({
      title: "Shed",
      display: { language: "fr", units: "feet-inch" },
    });
    expect((await desk.run("check", "shed.json")).out).toBe("shed.json peut servir : Shed.\n");
    expect((await desk.run("set-out", "shed.json")).exit).toBeLessThan(2);
  });
});

describe("--edit", () => {
  it("works on the edited project and leaves the file alone", async () => {
    const before = desk.read(DEMO);
    desk.write("retitle.json", [{ op: "replace", path: "/title", value: "What if" }]);
    const { out } = await desk.run("set-out", DEMO, "--edit", "retitle.json");
    expect(out).toContain("What if: pieces by face");
    expect(desk.read(DEMO)).toBe(before);
  });

  it("can mend a file that cannot be used as it stands", async () => {
    const broken = { ...JSON.parse(desk.read(DEMO)), title: "" };
    desk.write("broken.json", broken);
    desk.write("mend.json", [{ op: "replace", path: "/title", value: "Mended" }]);
    expect((await desk.run("check", "broken.json")).exit).toBe(2);
    expect((await desk.run("check", "broken.json", "--edit", "mend.json")).exit).toBe(0);
  });
});

describe("exit code 1", () => {
  interface Told {
    readonly findings: readonly {
      code: string;
      outcome: string;
      waived?: { who: string };
      where: { face?: string };
    }[];
  }
  const blocking = ({ findings }: Told) =>
    findings.filter(({ outcome }) => outcome === "fail" || outcome === "cannot evaluate");
  const file = "two-storey.outerleaf.json";

  it("ends with a waiver for every blocking finding, which stays in the answer with who answers for it", async () => {
    const before = await desk.run("prove", file, "--json");
    const open = blocking(JSON.parse(before.out));
    expect(before.exit).toBe(1);
    expect(open.length).toBeGreaterThan(0);
    const waivers = [...new Set(open.map(({ code }) => code))].map((code) => ({
      code,
      who: "A. Builder",
      when: "2026-03-02",
      why: "agreed on site",
    }));
    desk.write("waive.json", [{ op: "add", path: "/waivers", value: waivers }]);
    const { exit, out } = await desk.run("prove", file, "--json", "--edit", "waive.json");
    expect(exit).toBe(0);
    expect(blocking(JSON.parse(out)).every(({ waived }) => waived?.who === "A. Builder")).toBe(true);
    expect((await desk.run("prove", file, "--edit", "waive.json")).out).toContain("waived");
  });

  it("stays with a waiver for another place", async () => {
    const [first] = blocking(JSON.parse((await desk.run("prove", file, "--json")).out));
    const waiver = {
      code: first?.code,
      where: "no-such-face",
      who: "A. Builder",
      when: "2026-03-02",
      why: "x",
    };
    desk.write("elsewhere.json", [{ op: "add", path: "/waivers", value: [waiver] }]);
    const { exit, out } = await desk.run("prove", file, "--json", "--edit", "elsewhere.json");
    expect(exit).toBe(1);
    expect(blocking(JSON.parse(out)).some(({ waived }) => waived)).toBe(false);
  });

  it("does not come from start", async () => {
    expect((await desk.run("start", file, "--once")).exit).toBe(0);
  });

  it("comes from an equation asked outside its range, which then has no value", async () => {
    const { exit, out } = await desk.run("reckon", "woven-free-share", "openingMm=900", "wireMm=1", "--json");
    expect(exit).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      outcome: "cannot evaluate",
      outside: ["openingMm"],
      result: { unit: "1" },
    });
  });

  it("comes from a list that does not all fit", async () => {
    desk.write("large.json", { sheets: [[1220, 2440]], items: [[3000, 100, 1]] });
    const { exit, out } = await desk.run("saw", "large.json");
    expect(exit).toBe(1);
    expect(out).toContain("larger than any stock");
  });
});

describe("issue", () => {
  it("gives the same bytes for the same project, and says their hashes", async () => {
    for (const folder of ["one", "two"]) await desk.run("issue", DEMO, "--to", folder);
    const names = desk.names("one");
    expect(desk.names("two")).toEqual(names);
    for (const name of names)
      expect(desk.bytes(join("two", name)).equals(desk.bytes(join("one", name)))).toBe(true);
    const hash = (name: string): string => createHash("sha256").update(desk.bytes(name)).digest("hex");
    const manifest = JSON.parse(desk.read("one/manifest.json"));
    for (const { name, sha256 } of manifest.documents)
      expect({ name, sha256: hash(join("one", name)) }).toEqual({ name, sha256 });
    expect(manifest.input).toEqual({ name: DEMO, sha256: hash(DEMO) });
  });

  it("draws each face, its battens and a section of each zone, and writes schedules and findings", async () => {
    await desk.run("issue", DEMO, "--to", "three");
    const names = desk.names("three");
    for (const face of ["west", "front", "east", "north"]) {
      expect(names).toEqual(expect.arrayContaining([`face-${face}.svg`, `battens-${face}.svg`]));
      expect(names.some((name) => name.startsWith(`section-${face}-`))).toBe(true);
    }
    const others = [
      "drawings.pdf",
      "developed-elevation.svg",
      "findings.txt",
      "findings.json",
      "set-out.json",
      "order.csv",
    ];
    expect(names).toEqual(expect.arrayContaining(others));
    expect(desk.read("three/developed-elevation.svg")).toMatch(/^<svg [^>]*width="\d/);
  });

  it("prints waivers on its drawings", async () => {
    const waiver = {
      code: "P011",
      where: "front",
      who: "A. Engineer",
      when: "2026-03-02",
      why: "declared system",
    };
    desk.write("waiver.json", [{ op: "add", path: "/waivers", value: [waiver] }]);
    await desk.run("issue", DEMO, "--to", "waived", "--edit", "waiver.json");
    expect(desk.read("waived/face-front.svg")).toContain("A. Engineer");
    expect(desk.read("waived/findings.txt")).toContain("waived by A. Engineer, 2026-03-02: declared system");
  });
});

describe("serve", () => {
  it("serves the project, edited as asked, until it is stopped", async () => {
    desk.write("retitle.json", [{ op: "replace", path: "/title", value: "What if" }]);
    let served = "{}";
    const { exit, err } = await desk.serve(
      async (url) => {
        served = await (await fetch(new URL("/api/project", url))).text();
      },
      ...["serve", DEMO, "--port", "0", "--edit", "retitle.json"],
    );
    expect(exit).toBe(0);
    expect(err).toBe("Stopped.\n");
    expect(JSON.parse(JSON.parse(served).text)).toMatchObject({ title: "What if" });
  });

  it("started twice, says that the port is taken and takes the next", async () => {
    let out = "";
    await desk.serve(
      async (url) => {
        const second = await desk.serve(async () => undefined, "serve", DEMO, "--port", new URL(url).port);
        expect(second.url).not.toBe(url);
        out = second.out;
      },
      ...["serve", DEMO, "--port", "0"],
    );
    expect(out).toContain("is taken");
  });
});

it("progress goes to the error stream, only where a person watches it, and is wiped", async () => {
  const watched = bench({ watched: true });
  const { out, err } = await watched.run("cut", DEMO, "--json");
  watched.clear();
  expect(() => JSON.parse(out)).not.toThrow();
  expect(err).toContain("Setting out and proving …");
  expect(err.endsWith("\r\u001b[K")).toBe(true);
});

it("reads lengths in feet and inches", async () => {
  expect((await desk.run("set-out", DEMO, "--units", "feet-inch")).out).toMatch(/outer plane \d+ \d+\/\d+"/);
});
