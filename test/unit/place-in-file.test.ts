/** Places of the file as the sheets say them. What the words are is ours; pointers are those of RFC 6901. */
import { describe, expect, it } from "vitest";
import { project as schema } from "../../src/project/schema/project.ts";
import { placeInFile } from "../../src/scene/book/place-in-file.ts";
import { ENGLISH_MM, say } from "../../src/text/say.ts";
import { example } from "../contract/cut-facade-examples.ts";

const { project } = example("atelier-bouleau");
const FRENCH = { ...ENGLISH_MM, language: "fr" } as const;
const said = (pointer: string) => say(placeInFile(pointer, project), ENGLISH_MM);

describe("a place of the file", () => {
  it("is told by the ids of what it leads through, and its field in words", () => {
    const [cladding] = project.claddings;
    const [west, front] = project.faces;
    expect(said("/claddings/0/finish")).toBe(`cladding ${cladding?.id}: finish`);
    expect(said("/faces/0")).toBe(`face ${west?.id}`);
    expect(said("/faces/1/openings/0/frameProjection")).toBe(
      `face ${front?.id}, opening ${front?.openings[0]?.id}: how far the frame stands out`,
    );
    expect(say(placeInFile("/claddings/0/finish", project), FRENCH)).toBe(
      `bardage ${cladding?.id} : finition`,
    );
  });

  it("is told by where it is counted, if the entry has no id", () => {
    expect(said("/buildUps/0/layers/1/thickness")).toBe(
      `build-up ${project.buildUps[0]?.id}, layer 2: thickness`,
    );
  });

  it("is told by the nearest group with a word, if its field has none", () => {
    expect(said("/site/climate/no-such-field/3")).toBe("the site: climate");
    expect(said("/claddings/0/no-such-field")).toBe(`cladding ${project.claddings[0]?.id}`);
    expect(said("/claddings/99/finish")).toBe("cladding 100: finish");
    expect(said("")).toBe("the project file");
  });

  it("has a word for every field that the project begins with", () => {
    const wordless = Object.keys(schema.shape).filter(
      (field) => placeInFile(`/${field}`, project).key !== `drawing.at.file.${field}`,
    );
    expect(wordless).toEqual([]);
  });

  it("is handed back as it stands where it is no pointer", () => {
    expect(said("west/boards")).toBe("west/boards");
  });
});
