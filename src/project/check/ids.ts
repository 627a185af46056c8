/** Ids that two things of one kind bear. */
import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { faceCode, soffitCode } from "../lookup.ts";
import { type Path, pointerOf } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Project } from "../schema/project.ts";

interface Named {
  readonly id: string;
  readonly path: Path;
}

export function doubledIds(file: SourceFile, project: Project): Finding[] {
  const { faces, stock, pile } = project;
  const lists: Named[][] = [
    named(project.buildUps, ["buildUps"]),
    named(project.claddings, ["claddings"]),
    named(faces, ["faces"]),
    // Schedules, marks and drawings name openings, penetrations and lines without their face.
    faces.flatMap((face, i) => named(face.openings, ["faces", i, "openings"])),
    faces.flatMap((face, i) => named(face.penetrations ?? [], ["faces", i, "penetrations"])),
    faces.flatMap((face, i) => named(face.lines ?? [], ["faces", i, "lines"])),
    ...faces.map((face, i) => named(face.zones, ["faces", i, "zones"])),
    named(project.rods ?? [], ["rods"]),
    named(stock.sheets, ["stock", "sheets"]),
    named(stock.battens, ["stock", "battens"]),
    named(stock.screws, ["stock", "screws"]),
    named(stock.boards ?? [], ["stock", "boards"]),
    named(pile?.lots ?? [], ["pile", "lots"]),
    named(pile?.boards ?? [], ["pile", "boards"]),
    (project.survey ?? []).map(({ face }, i) => ({ id: face, path: ["survey", i, "face"] })),
  ];
  return [...lists.flatMap((list) => doubledIn(file, list)), ...doubledCodes(file, project)];
}

/** Marks begin with a code: two faces with one would give two pieces the same name. */
function doubledCodes(file: SourceFile, { faces }: Project): Finding[] {
  const codes = faces.flatMap((face, i) => [
    { code: faceCode(face), path: ["faces", i, "code"] as Path },
    ...face.openings.flatMap((opening, j) =>
      opening.soffit
        ? [{ code: soffitCode(face, opening), path: ["faces", i, "openings", j, "soffit", "code"] as Path }]
        : [],
    ),
  ]);
  const taken = codes.map(({ code }) => code);
  return codes.flatMap(({ code, path }, place) => {
    const earlier = codes[taken.indexOf(code)];
    // Ids that are taken twice give one code as well, and are told as such.
    if (taken.indexOf(code) === place || !earlier || sameId(faces, earlier.path, path)) return [];
    const says = message("project.code-twice", { code, earlier: pointerOf(earlier.path) });
    return [
      problem(file, {
        code: "F009",
        path,
        says,
        hint: message("project.hint.free-code", { free: freeCode(code, taken) }),
      }),
    ];
  });
}

function sameId(faces: Project["faces"], [, a]: Path, [, b]: Path): boolean {
  return a !== b && faces[Number(a)]?.id === faces[Number(b)]?.id;
}

function freeCode(code: string, taken: readonly string[]): string {
  let number = 2;
  while (taken.includes(`${code.slice(0, 4)}${number}`)) number += 1;
  return `${code.slice(0, 4)}${number}`;
}

function named(list: readonly { readonly id: string }[], at: Path): Named[] {
  return list.map(({ id }, i) => ({ id, path: [...at, i, "id"] }));
}

function doubledIn(file: SourceFile, list: readonly Named[]): Finding[] {
  const first = new Map<string, Path>();
  const ids = new Set(list.map(({ id }) => id));
  if (ids.size === list.length) return [];
  return list.flatMap(({ id, path }) => {
    const earlier = first.get(id);
    if (earlier === undefined) {
      first.set(id, path);
      return [];
    }
    const says = message("project.id-twice", { earlier: pointerOf(earlier) });
    const isSurvey = path[0] === "survey";
    const hint = isSurvey
      ? message("project.hint.one-survey")
      : message("project.hint.free-id", { free: freeId(id, ids) });
    return [problem(file, { code: "F009", path, says, hint })];
  });
}

function freeId(id: string, taken: ReadonlySet<string>): string {
  const stem = id.slice(0, 20);
  let number = 2;
  while (taken.has(`${stem}-${number}`)) number += 1;
  return `${stem}-${number}`;
}
