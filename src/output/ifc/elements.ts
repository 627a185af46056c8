/** Which element of IFC4 a piece is, and what is told of it: common property sets, base quantities, and a set of our own. */
import { polygonBounds } from "../../geometry/polygon.ts";
import { regionArea } from "../../geometry/region.ts";
import type { Piece, PieceKind } from "../../setout/facade.ts";
import { type Value, word } from "./step.ts";

export interface ElementClass {
  readonly type: "IFCPLATE" | "IFCMEMBER" | "IFCCOVERING" | "IFCDISCRETEACCESSORY";
  readonly predefined: string;
  /** What it is of its kind, where the standard has no word. */
  readonly objectType: string | undefined;
  /** Its common property set and base quantities, without what these names share. */
  readonly set: "Plate" | "Member" | "Covering" | undefined;
}

const own = (type: ElementClass["type"], objectType: string, set?: ElementClass["set"]): ElementClass => ({
  type,
  predefined: "USERDEFINED",
  objectType,
  set,
});

export const CLASSES: Readonly<Record<PieceKind, ElementClass>> = {
  sheet: { type: "IFCPLATE", predefined: "SHEET", objectType: undefined, set: "Plate" },
  board: own("IFCMEMBER", "BOARD", "Member"),
  batten: own("IFCMEMBER", "BATTEN", "Member"),
  "counter-batten": own("IFCMEMBER", "COUNTER-BATTEN", "Member"),
  rail: own("IFCMEMBER", "RAIL", "Member"),
  post: { type: "IFCMEMBER", predefined: "POST", objectType: undefined, set: "Member" },
  backing: own("IFCMEMBER", "BACKING", "Member"),
  packer: own("IFCDISCRETEACCESSORY", "PACKER"),
  closure: own("IFCDISCRETEACCESSORY", "CLOSURE"),
  flashing: own("IFCPLATE", "FLASHING", "Plate"),
  gasket: own("IFCDISCRETEACCESSORY", "GASKET"),
  sleeve: own("IFCDISCRETEACCESSORY", "SLEEVE"),
  membrane: { type: "IFCCOVERING", predefined: "MEMBRANE", objectType: undefined, set: "Covering" },
  return: own("IFCPLATE", "RETURN", "Plate"),
};

const MM2_PER_M2 = 1e6;
const MM3_PER_M3 = 1e9;

type Quantity = readonly [name: string, entity: "LENGTH" | "AREA" | "VOLUME" | "WEIGHT", value: number];

/** Base quantities in the project's units: mm, m², m³, kg. */
export function quantitiesOf(
  { outline, holes, z, cut, massKg }: Piece,
  set: ElementClass["set"],
): Quantity[] {
  const gross = regionArea({ outline, holes: [] });
  const net = regionArea({ outline, holes });
  const thick = z[1] - z[0];
  const volumes: Quantity[] = [
    ["GrossVolume", "VOLUME", (gross * thick) / MM3_PER_M3],
    ["NetVolume", "VOLUME", (net * thick) / MM3_PER_M3],
    ...(massKg > 0 ? [["NetWeight", "WEIGHT", massKg] as Quantity] : []),
  ];
  if (set === "Member") {
    return [
      ["Length", "LENGTH", cut.length],
      ["CrossSectionArea", "AREA", (cut.width * cut.thickness) / MM2_PER_M2],
      ...volumes,
    ];
  }
  const areas: Quantity[] = [
    ["Width", "LENGTH", thick],
    ["GrossArea", "AREA", gross / MM2_PER_M2],
    ["NetArea", "AREA", net / MM2_PER_M2],
  ];
  return set === "Covering" ? areas : [...areas, ...volumes];
}

const text = (value: string): Value => ({ type: "IFCLABEL", value });
const length = (value: number): Value => ({ type: "IFCPOSITIVELENGTHMEASURE", value });

/** What the schedules say of it, and what the solid leaves out. */
export function propertiesOf(piece: Piece): readonly (readonly [name: string, value: Value])[] {
  const { zone, course, stock, lot, bevelDeg, ends, cut, grain } = piece;
  const { y } = polygonBounds(piece.outline);
  return [
    ["Face", text(piece.face)],
    ...(zone === undefined ? [] : [["Zone", text(zone)] as const]),
    ...(course === undefined ? [] : [["Course", { type: "IFCINTEGER", value: { whole: course } }] as const]),
    ...(stock === undefined ? [] : [["Stock", text(stock)] as const]),
    ...(lot === undefined ? [] : [["Lot", text(lot)] as const]),
    ...(grain === undefined ? [] : [["GrainAlong", text(grain)] as const]),
    ...(cut.length > 0 ? [["CutLength", length(cut.length)] as const] : []),
    ...(cut.width > 0 ? [["CutWidth", length(cut.width)] as const] : []),
    ...(cut.thickness > 0 ? [["CutThickness", length(cut.thickness)] as const] : []),
    ["LowerEdge", { type: "IFCLENGTHMEASURE", value: y[0] }],
    ...(bevelDeg === undefined
      ? []
      : [["TopEdgeBevelDegrees", { type: "IFCREAL", value: bevelDeg }] as const]),
    ...(["left", "right"] as const).flatMap((end) =>
      ends[end].cut === "mitre"
        ? [
            [
              `${end === "left" ? "Left" : "Right"}MitreDegrees`,
              { type: "IFCREAL", value: ends[end].angleDeg },
            ] as const,
          ]
        : [],
    ),
  ];
}

export const SCREW = word("SCREW");
