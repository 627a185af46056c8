/** Ids that point at nothing. */

import { RULES } from "../../findings/codes.ts";
import type { Finding } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";
import { nearest } from "../nearest.ts";
import { type Path, pointerOf } from "../pointer.ts";
import { problem, type SourceFile } from "../problem.ts";
import type { Project } from "../schema/project.ts";

interface Reference {
  readonly id: string;
  readonly path: Path;
  readonly known: readonly string[];
}

export function danglingIds(file: SourceFile, project: Project): Finding[] {
  const references = [
    ...zoneReferences(project),
    ...layerReferences(project),
    ...claddingReferences(project),
    ...faceReferences(project),
    ...pileReferences(project),
    ...spoiledReferences(project),
    ...upkeepReferences(project),
    ...crewReferences(project),
  ];
  const dangling = references
    .filter(({ id, known }) => !known.includes(id))
    .map((reference) => danglingId(file, reference));
  return [...dangling, ...spoiledLengths(file, project), ...waiverCodes(file, project)];
}

function danglingId(file: SourceFile, { id, path, known }: Reference): Finding {
  const near = nearest(id, known);
  const hint =
    known.length === 0
      ? message("project.hint.none-there")
      : near === undefined
        ? message("project.hint.words", { words: known })
        : message("project.hint.nearest", { near, words: known });
  return problem(file, {
    code: "F010",
    path,
    says: message("project.id-dangling"),
    hint,
    ...(near === undefined ? {} : { edit: [{ op: "replace", path: pointerOf(path), value: near }] }),
  });
}

function idsOf(list: readonly { readonly id: string }[] | undefined): string[] {
  return (list ?? []).map(({ id }) => id);
}

function zoneReferences({ faces, claddings, buildUps }: Project): Reference[] {
  return faces.flatMap((face, i) =>
    face.zones.flatMap((zone, j) => [
      { id: zone.cladding, path: ["faces", i, "zones", j, "cladding"], known: idsOf(claddings) },
      { id: zone.buildUp, path: ["faces", i, "zones", j, "buildUp"], known: idsOf(buildUps) },
    ]),
  );
}

function upkeepReferences({ upkeep, faces }: Project): Reference[] {
  return (upkeep?.every ?? []).flatMap(({ face }, i) =>
    face === undefined ? [] : [{ id: face, path: ["upkeep", "every", i, "face"], known: idsOf(faces) }],
  );
}

function crewReferences({ crews = [], faces }: Project): Reference[] {
  return crews.flatMap(({ work }, i) =>
    work.map(({ face }, j) => ({ id: face, path: ["crews", i, "work", j, "face"], known: idsOf(faces) })),
  );
}

function layerReferences({ buildUps, stock }: Project): Reference[] {
  return buildUps.flatMap((buildUp, i) => [
    { id: buildUp.battenScrew, path: ["buildUps", i, "battenScrew"], known: idsOf(stock.screws) },
    ...(buildUp.railScrew === undefined
      ? []
      : [{ id: buildUp.railScrew, path: ["buildUps", i, "railScrew"], known: idsOf(stock.screws) }]),
    ...buildUp.layers.flatMap((layer, j) =>
      layer.kind === "batten" || layer.kind === "rail"
        ? [{ id: layer.stock, path: ["buildUps", i, "layers", j, "stock"], known: idsOf(stock.battens) }]
        : [],
    ),
  ]);
}

function claddingReferences({ claddings, stock, pile }: Project): Reference[] {
  return claddings.flatMap((cladding, i) => {
    const listed =
      cladding.kind === "sheets"
        ? { key: "stock", ids: cladding.stock, known: idsOf(stock.sheets) }
        : { key: "lots", ids: cladding.lots ?? [], known: idsOf(pile?.lots) };
    return [
      { id: cladding.screw, path: ["claddings", i, "screw"], known: idsOf(stock.screws) },
      ...listed.ids.map((id, j) => ({ id, path: ["claddings", i, listed.key, j], known: listed.known })),
    ];
  });
}

function faceReferences(project: Project): Reference[] {
  const { faces, claddings, buildUps, corners = [], rods = [], survey = [], stock } = project;
  const known = idsOf(faces);
  const zonesOf = new Map(faces.map((face) => [face.id, idsOf(face.zones)]));
  return [
    ...faces.flatMap(({ openings }, i) =>
      openings.flatMap(({ linedBy = [] }, j) =>
        linedBy.map((face, k) => ({ id: face, path: ["faces", i, "openings", j, "linedBy", k], known })),
      ),
    ),
    ...faces.flatMap(({ openings }, i) =>
      openings.flatMap(({ reveal }, j) => {
        const path = ["faces", i, "openings", j, "reveal", "cladding"];
        return reveal?.cladding === undefined ? [] : [{ id: reveal.cladding, path, known: idsOf(claddings) }];
      }),
    ),
    ...faces.flatMap(({ openings }, i) =>
      openings.flatMap(({ soffit }, j) => {
        const path = ["faces", i, "openings", j, "soffit"];
        if (!soffit) return [];
        return [
          { id: soffit.cladding, path: [...path, "cladding"], known: idsOf(claddings) },
          { id: soffit.buildUp, path: [...path, "buildUp"], known: idsOf(buildUps) },
        ];
      }),
    ),
    ...corners.flatMap(({ left, right, lead, kind, post }, i) => [
      { id: left, path: ["corners", i, "left"], known },
      { id: right, path: ["corners", i, "right"], known },
      ...(lead === undefined || kind !== "lapped"
        ? []
        : [{ id: lead, path: ["corners", i, "lead"], known: [left, right] }]),
      ...(post === undefined
        ? []
        : [
            { id: post.stock, path: ["corners", i, "post", "stock"], known: idsOf(stock.battens) },
            { id: post.screw, path: ["corners", i, "post", "screw"], known: idsOf(stock.screws) },
          ]),
    ]),
    ...rods.flatMap((rod, i) => [
      ...rod.zones.flatMap(({ face, zone }, j) => {
        const zones = zonesOf.get(face);
        const at = ["rods", i, "zones", j];
        return [
          { id: face, path: [...at, "face"], known },
          // Where the face is unknown, nothing can be said of its zone.
          ...(zones === undefined ? [] : [{ id: zone, path: [...at, "zone"], known: zones }]),
        ];
      }),
      ...rod.leads.map((id, j) => ({
        id,
        path: ["rods", i, "leads", j],
        known: [...new Set(rod.zones.map(({ face }) => face))],
      })),
    ]),
    ...survey.map(({ face }, i) => ({ id: face, path: ["survey", i, "face"], known })),
  ];
}

function pileReferences({ pile }: Project): Reference[] {
  const known = idsOf(pile?.lots);
  return (pile?.boards ?? []).map(({ lot }, i) => ({ id: lot, path: ["pile", "boards", i, "lot"], known }));
}

/** What is spoiled was of the stock or of the pile. */
function spoiledReferences({ cutting, stock, pile }: Project): Reference[] {
  const lengths = [...idsOf(stock.battens), ...idsOf(stock.boards)];
  return (cutting?.spoiled ?? []).map((one, i): Reference => {
    const at = ["cutting", "spoiled", i];
    if (one.kind === "board") return { id: one.board, path: [...at, "board"], known: idsOf(pile?.boards) };
    const known = one.kind === "sheet" ? idsOf(stock.sheets) : lengths;
    return { id: one.stock, path: [...at, "stock"], known };
  });
}

/** A bought length is one of those that its stock comes in. */
function spoiledLengths(file: SourceFile, { cutting, stock }: Project): Finding[] {
  return (cutting?.spoiled ?? []).flatMap((one, i) => {
    if (one.kind !== "length") return [];
    const section = [...stock.battens, ...(stock.boards ?? [])].find(({ id }) => id === one.stock);
    if (!section || section.lengths.includes(one.length)) return [];
    return [
      problem(file, {
        code: "F010",
        path: ["cutting", "spoiled", i, "length"],
        says: message("project.id-dangling"),
        hint: message("project.hint.words", { words: section.lengths.map(String) }),
      }),
    ];
  });
}

/** A waiver of a rule that does not exist waives nothing; the rest of the file is none the worse for it. */
function waiverCodes(file: SourceFile, { waivers = [] }: Project): Finding[] {
  const known = Object.keys(RULES);
  return waivers.flatMap(({ code }, i) => {
    if (known.includes(code)) return [];
    const near = nearest(code, known);
    const hint =
      near === undefined ? message("project.hint.rule-code") : message("project.hint.near", { near });
    const says = message("project.not-a-rule");
    return [problem(file, { code: "F007", outcome: "attention", path: ["waivers", i, "code"], says, hint })];
  });
}
