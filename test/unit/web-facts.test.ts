/** What the page tells of a pick is what setting-out says of it. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { designFile } from "../../src/design.ts";
import { factsOf } from "../../src/web/picks/facts.ts";
import { jointId } from "../../src/web/picks/joint-id.ts";

const text = readFileSync("examples/atelier-bouleau.outerleaf.json", "utf8");
const made = designFile({ name: "demo", text });
if (made.kind !== "designed") throw new Error("the demo reads");
const { design } = made;

it("tells of every joint between sheets why it lies there, and what was left for it", () => {
  const joints = design.facade.faces.flatMap((face) =>
    face.joints.flatMap((joint, at) => {
      if (joint.kind !== "sheet joint") return [];
      const facts = factsOf(design, { kind: "joint", face: face.id, id: jointId(face, at) });
      const told = (key: string) => facts.find(({ label }) => label.key === key)?.value;
      expect(told("page.fact.why")).toEqual(joint.why?.rule);
      expect(told("page.fact.runner-up")).toEqual(joint.why?.runnerUp);
      return [joint];
    }),
  );
  expect(joints.length).toBeGreaterThan(20);
  expect(joints.filter(({ why }) => why?.runnerUp).length).toBeGreaterThan(0);
});
