/** Proven again with a memo after an edit, a facade has the findings that it has from scratch. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { design } from "../../src/design.ts";
import { readDocument } from "../../src/project/read.ts";
import type { Project, ProjectDocument } from "../../src/project/schema/project.ts";
import { proofContext } from "../../src/proof/context.ts";
import { FACE_RULES } from "../../src/proof/face-rules.ts";
import { createSunMemo } from "../../src/proof/light/sun-memo.ts";
import { createProofMemo } from "../../src/proof/proof-memo.ts";
import { createFaceMemo } from "../../src/setout/memo.ts";

const EXAMPLES = ["atelier-bouleau", "imperial", "l-plan", "porch", "two-storey"];

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

function document(name: string): ProjectDocument {
  return JSON.parse(readFileSync(new URL(`../../examples/${name}.outerleaf.json`, import.meta.url), "utf8"));
}

function read(name: string, edit: (raw: Loose) => void = () => undefined): Project {
  const raw = document(name);
  edit(raw);
  const result = readDocument(raw, name);
  if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.findings[0])}`);
  return result.project;
}

/** Each changes something else that rules read: of one face, of all, of a build-up, of the place; or takes it back. */
const EDITS: readonly ((raw: Loose) => void)[] = [
  () => undefined,
  ({ faces }) => {
    faces[0].ground = faces[0].ground.map(([x, y]: [number, number]) => [x, y - 10]);
  },
  ({ faces }) => Object.assign(faces[0], { frameProjection: 12 }),
  ({ faces }) => Object.assign(faces[0], { toBoundary: 900 }),
  ({ limits }) => Object.assign(limits.cavityMin, { value: 100 }),
  ({ limits }) => Reflect.deleteProperty(limits, "membrane"),
  ({ site }) => Object.assign(site, { climate: {} }),
  ({ structure }) => Reflect.deleteProperty(structure, "heat"),
  ({ stock }) => {
    for (const screw of stock.screws) screw.diameter = 3;
  },
  ({ faces }) => Object.assign(faces[0], { eaves: { depth: 700, y: 4000 } }),
  ({ faces }) => {
    for (const face of faces) face.azimuthDeg = (face.azimuthDeg + 20) % 360;
  },
  ({ claddings }) => {
    for (const cladding of claddings) if (cladding.kind === "boards") cladding.bevelDeg = 30;
  },
  ({ faces }) => faces.reverse(),
  () => undefined,
];

describe.each(EXAMPLES)("%s", (name) => {
  it("has the same findings through a row of edits as from scratch", () => {
    const faces = createFaceMemo({ spare: 500, shareds: 3 });
    const proof = createProofMemo();
    let told = 0;
    for (const [at, edit] of EDITS.entries()) {
      const raw = document(name);
      edit(raw);
      const result = readDocument(raw, name);
      // Not every building has all that is edited here in a form that may be taken away.
      if (!result.ok) continue;
      told += 1;
      const kept = design(result.project, { faces, proof }).findings;
      expect({ at, findings: kept }).toEqual({
        at,
        findings: design(result.project).findings,
      });
    }
    expect(told).toBeGreaterThan(EDITS.length / 2);
  });

  it("has the same findings when the sun is made anew", () => {
    const project = read(name);
    const light = { memo: createSunMemo({ places: 1 }) };
    expect(design(project, { light }).findings).toEqual(design(project).findings);
  });

  it("says of each face by itself what the rules of one face say of all together", () => {
    const { project, facade, demands } = design(read(name));
    const context = proofContext({ project, facade, demands });
    for (const rule of FACE_RULES) {
      const apart = facade.faces.flatMap((face) => {
        const zones = context.zones.filter((view) => view.face === face);
        return zones.length === 0 ? [] : rule({ ...context, zones });
      });
      expect({ rule: rule.name, findings: apart }).toEqual({ rule: rule.name, findings: rule(context) });
    }
  });
});

it("proves a moved window's own face again, and no other", () => {
  const faces = createFaceMemo({ spare: 500, shareds: 3 });
  const proof = createProofMemo();
  design(read("atelier-bouleau"), { faces, proof });
  const all = proof.made;
  expect(all).toBeGreaterThan(4);
  const moved = read("atelier-bouleau", (raw) => {
    const front = raw.faces.find(({ id }: Loose) => id === "front");
    front.openings.find(({ id }: Loose) => id === "W2").x = [751, 1651];
  });
  design(moved, { faces, proof });
  expect(proof.made).toBe(all + 1);
  design(moved, { faces, proof });
  expect(proof.made).toBe(all + 1);
});
