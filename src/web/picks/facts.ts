/** What there is to know of a pick, as rows of a label and a value. */
import type { Design } from "../../design.ts";
import { polygonBounds } from "../../geometry/polygon.ts";
import { heading } from "../../scene/views/extent.ts";
import type { FaceLayout, Fixing, Joint, Piece, Why } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { faceOf, jointOf, ownLineOf, type Pick, penetrationOf, pieceOf } from "./pick.ts";

export interface Fact {
  readonly label: Message;
  readonly value: Message | string;
}

function fact(label: string, value: Message | string): Fact {
  return { label: message(label), value };
}

export function factsOf(design: Design, pick: Pick): Fact[] {
  const face = faceOf(design, pick.face);
  if (!face) return [];
  switch (pick.kind) {
    case "face":
      return faceFacts(face);
    case "zone":
      return zoneFacts(design, { face, id: pick.id });
    case "opening":
      return openingFacts(face, pick.id);
    case "penetration": {
      const one = penetrationOf(design, pick);
      return one
        ? [
            fact("page.fact.kind", one.kind),
            fact("page.fact.diameter", message("page.value.length", { value: one.diameter })),
            fact("page.fact.along", message("page.value.length", { value: one.x })),
            fact("page.fact.height-at", message("page.value.length", { value: one.y })),
          ]
        : [];
    }
    case "line": {
      const line = ownLineOf(design, pick);
      return line ? [fact("page.fact.height-at", message("page.value.length", { value: line.y }))] : [];
    }
    case "piece": {
      const piece = pieceOf(design, pick);
      return piece ? pieceFacts(piece) : [];
    }
    case "joint": {
      const joint = jointOf(design, pick);
      return joint ? jointFacts(joint) : [];
    }
  }
}

function faceFacts(face: FaceLayout): Fact[] {
  const { x, y } = polygonBounds(face.outline);
  const count = (kind: Piece["kind"]): number => face.pieces.filter((piece) => piece.kind === kind).length;
  return [
    fact("page.fact.size", message("page.value.size", { width: x[1] - x[0], height: y[1] - y[0] })),
    ...(face.azimuthDeg === undefined
      ? []
      : [fact("page.fact.azimuth", message("page.value.degrees", { value: face.azimuthDeg }))]),
    fact("page.fact.zones", face.zones.map(({ id }) => id).join(", ")),
    fact(
      "page.fact.pieces",
      message("page.value.cladding-counts", { sheets: count("sheet"), boards: count("board") }),
    ),
    fact("page.fact.battens", String(count("batten"))),
  ];
}

function zoneFacts(design: Design, { face, id }: { face: FaceLayout; id: string }): Fact[] {
  const zone = face.zones.find((one) => one.id === id);
  const plane = design.facade.planes.find((one) => one.face === face.id && one.zone === id);
  if (!zone) return [];
  const rows = [fact("page.fact.cladding", zone.cladding), fact("page.fact.build-up", zone.buildUp)];
  if (plane) {
    rows.push(
      fact("page.fact.cavity", message("page.value.length", { value: plane.cavity })),
      fact("page.fact.plane", message("page.value.length", { value: plane.faceZ })),
      fact("page.fact.layers", message("page.value.list", { items: plane.layers.map(layerName) })),
    );
  }
  const pieces = face.pieces.filter((piece) => piece.zone === id);
  rows.push(fact("page.fact.screws", String(pieces.reduce((sum, { fixings }) => sum + fixings.length, 0))));
  return rows;
}

function layerName({ kind, z }: { kind: string; z: readonly [number, number] }): Message {
  const thickness = z[1] - z[0];
  return thickness > 0
    ? message("page.value.layer", { kind, thickness })
    : message("page.value.term", { kind });
}

function openingFacts(face: FaceLayout, id: string): Fact[] {
  const opening = face.openings.find((one) => one.id === id);
  if (!opening) return [];
  const { x, y } = opening.region;
  const lines = face.controlLines.filter(({ of }) => of === id);
  return [
    fact("page.fact.kind", message("page.value.term", { kind: opening.kind })),
    fact("page.fact.size", message("page.value.size", { width: x[1] - x[0], height: y[1] - y[0] })),
    fact("page.fact.along", message("page.value.span", { from: x[0], to: x[1] })),
    fact("page.fact.heights", message("page.value.span", { from: y[0], to: y[1] })),
    ...lines
      .filter(({ kind }) => kind === "sill" || kind === "head")
      .map((line) =>
        fact(
          line.kind === "sill" ? "page.fact.line-sill" : "page.fact.line-head",
          message("page.value.length", { value: line.at }),
        ),
      ),
  ];
}

function pieceFacts(piece: Piece): Fact[] {
  const { length, width, thickness } = piece.cut;
  const rows = [
    fact(
      "page.fact.kind",
      piece.course === undefined
        ? message("page.value.term", { kind: piece.kind })
        : message("page.value.course", { kind: piece.kind, course: piece.course }),
    ),
    fact("page.fact.cut-size", message("page.value.cut", { a: length, b: width, c: thickness })),
    fact("page.fact.material", piece.material),
  ];
  if (piece.massKg > 0)
    rows.push(fact("page.fact.mass", message("page.value.mass", { value: piece.massKg })));
  rows.push(...whyFacts(piece.why));
  if (piece.why.line) rows.push(fact("page.fact.line", piece.why.line));
  rows.push(fact("page.fact.fixings", fixingsText(piece.fixings)));
  const supports = piece.supports.slice(0, MOST_SUPPORTS).join(", ");
  if (piece.supports.length > MOST_SUPPORTS) {
    const more = piece.supports.length - MOST_SUPPORTS;
    rows.push(fact("page.fact.supports", message("page.value.and-more", { items: supports, more })));
  } else if (piece.supports.length > 0) rows.push(fact("page.fact.supports", supports));
  return rows;
}

const MOST_SUPPORTS = 6;

/** Why something is where it is, and what was left for it. */
function whyFacts({ rule, runnerUp }: Why): Fact[] {
  return [fact("page.fact.why", rule), ...(runnerUp ? [fact("page.fact.runner-up", runnerUp)] : [])];
}

/** Fixings by kind and screw: `14 × sliding point sheet-38, hole 7 to 9, bite 29 mm`. */
function fixingsText(fixings: readonly Fixing[]): Message {
  if (fixings.length === 0) return message("page.value.none");
  const groups = new Map<string, [Fixing, ...Fixing[]]>();
  for (const one of fixings) {
    const key = `${one.kind} ${one.screw}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  const items = [...groups.values()].map((group) => {
    const holes = group.map(({ hole }) => hole);
    const [least, most] = [Math.min(...holes), Math.max(...holes)];
    return message(least === most ? "page.value.fixing" : "page.value.fixing-holes", {
      count: group.length,
      kind: group[0].kind,
      screw: group[0].screw,
      hole: least,
      ...(least === most ? {} : { most }),
      bite: Math.min(...group.map(({ bite }) => bite)),
    });
  });
  return message("page.value.list", { items });
}

function jointFacts(joint: Joint): Fact[] {
  const { x, y } = polygonBounds(joint.region);
  const long = joint.along === "x" ? x[1] - x[0] : y[1] - y[0];
  const from = joint.along === "x" ? y[0] : x[0];
  return [
    fact("page.fact.kind", message("page.value.term", { kind: joint.kind })),
    fact("page.fact.width", message("page.value.gap", { value: joint.width })),
    fact("page.fact.long", message("page.value.length", { value: long })),
    fact(
      joint.along === "x" ? "page.fact.height-at" : "page.fact.along",
      message("page.value.length", { value: from }),
    ),
    fact("page.fact.face", heading(joint.face)),
    ...(joint.why ? whyFacts(joint.why) : []),
    ...(joint.line ? [fact("page.fact.line", joint.line)] : []),
  ];
}
