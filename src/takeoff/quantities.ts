/** Counts, areas, masses and running metres of a facade. */

import { rectOutline } from "../geometry/rect.ts";
import { intersect, regionArea } from "../geometry/region.ts";
import type { Project } from "../project/schema/project.ts";
import { USUAL_ROLL } from "../setout/behind/index.ts";
import type { Facade, FaceLayout, Piece } from "../setout/facade.ts";
import type { LayerArea, MassLine, ScrewCount, SleeveLine, StripLine, ZoneArea } from "./model.ts";
import { counted } from "./schedules.ts";

const MM_PER_M = 1000;
const MM2_PER_M2 = 1e6;

export function allPieces(facade: Facade): Piece[] {
  return facade.faces.flatMap(({ pieces }) => pieces);
}

/** Screws by id, in the order of the ids. */
export function screwCounts(pieces: readonly Piece[]): ScrewCount[] {
  const fixings = pieces.flatMap((piece) => piece.fixings);
  return counted(fixings.map(({ screw }) => screw))
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([screw, count]) => {
      const ofKind = (wanted: string): number =>
        fixings.filter((one) => one.screw === screw && one.kind === wanted).length;
      return {
        screw,
        count,
        fixed: ofKind("fixed"),
        sliding: ofKind("sliding"),
        plain: ofKind("plain"),
      };
    });
}

export function zoneAreas(facade: Facade): ZoneArea[] {
  return facade.faces.flatMap((face) => face.zones.map((zone) => zoneArea(face, zone)));
}

function zoneArea(face: FaceLayout, zone: FaceLayout["zones"][number]): ZoneArea {
  const gross = regionArea({ outline: zone.region, holes: [] });
  const openings = face.openings
    .flatMap(({ region }) => intersect(zone.region, rectOutline(region)))
    .reduce((sum, region) => sum + regionArea(region), 0);
  const pieces = face.pieces
    .filter((piece) => piece.zone === zone.id && (piece.kind === "sheet" || piece.kind === "board"))
    .reduce((sum, piece) => sum + regionArea(piece), 0);
  const joints = face.joints
    .filter((joint) => joint.zone === zone.id && joint.kind !== "edge")
    .reduce((sum, { region, holes }) => sum + regionArea({ outline: region, holes }), 0);
  return {
    face: face.id,
    zone: zone.id,
    cladding: zone.cladding,
    gross: gross / MM2_PER_M2,
    net: (gross - openings) / MM2_PER_M2,
    pieces: pieces / MM2_PER_M2,
    openSharePercent: pieces > 0 ? (100 * joints) / (joints + pieces) : 0,
  };
}

export function massLines(pieces: readonly Piece[]): MassLine[] {
  const lines = new Map<string, MassLine>();
  for (const { kind, material, massKg } of pieces) {
    if (massKg === 0) continue;
    const key = `${kind} ${material}`;
    const before = lines.get(key) ?? { kind, material, count: 0, massKg: 0 };
    lines.set(key, { kind, material, count: before.count + 1, massKg: before.massKg + massKg });
  }
  return [...lines.values()];
}

export function packerCounts(pieces: readonly Piece[]): { thickness: number; count: number }[] {
  return counted(pieces.filter(({ kind }) => kind === "packer").map(({ cut }) => cut.thickness))
    .sort(([a], [b]) => a - b)
    .map(([thickness, count]) => ({ thickness, count }));
}

export function sleeveLines(pieces: readonly Piece[]): SleeveLine[] {
  const lines = new Map<string, SleeveLine>();
  for (const { kind, material, cut } of pieces) {
    if (kind !== "sleeve") continue;
    const key = `${material} ${cut.width} ${cut.length}`;
    const count = (lines.get(key)?.count ?? 0) + 1;
    lines.set(key, { material, diameter: cut.width, length: cut.length, count });
  }
  return [...lines.values()];
}

/** Running metres of meshes, gasket strips, pans or bent metal, by material and section. */
export function stripLines(
  pieces: readonly Piece[],
  kind: "closure" | "gasket" | "flashing" | "membrane",
): StripLine[] {
  const lines = new Map<string, StripLine>();
  for (const piece of pieces) {
    if (piece.kind !== kind) continue;
    const { material, cut } = piece;
    const key = `${material} ${cut.width} ${cut.thickness}`;
    const before = lines.get(key)?.metres ?? 0;
    const metres = before + cut.length / MM_PER_M;
    lines.set(key, { material, width: cut.width, thickness: cut.thickness, metres });
  }
  return [...lines.values()];
}

/** Membranes and insulation over the net areas of their zones, and the roll that a membrane's strips take. */
export function layerAreas(project: Project, facade: Facade, areas: readonly ZoneArea[]): LayerArea[] {
  const lines = new Map<string, LayerArea>();
  for (const plane of facade.planes) {
    const net = areas.find(({ face, zone }) => face === plane.face && zone === plane.zone)?.net ?? 0;
    for (const { kind, material, z } of plane.layers) {
      if (kind !== "membrane" && kind !== "insulation") continue;
      const thickness = z[1] - z[0];
      const key = `${kind} ${material ?? ""} ${thickness}`;
      const areaM2 = (lines.get(key)?.areaM2 ?? 0) + net;
      lines.set(key, { kind, ...(material === undefined ? {} : { material }), thickness, areaM2 });
    }
  }
  const rolls = rollAreas(project, facade);
  return [...lines.values()].flatMap((line): LayerArea[] => {
    const own = line.kind === "membrane" ? rolls.filter(({ thickness }) => thickness === line.thickness) : [];
    return own.length === 0 ? [line] : own.map(({ width, areaM2 }) => ({ ...line, roll: { width, areaM2 } }));
  });
}

interface RollArea {
  readonly thickness: number;
  readonly width: number;
  readonly areaM2: number;
}

/** A strip takes the roll's whole width, whatever is cut off along it. */
function rollAreas(project: Project, facade: Facade): RollArea[] {
  const sums = new Map<string, RollArea>();
  for (const { zones, pieces } of facade.faces) {
    for (const { zone: id, kind, cut, profile } of pieces) {
      if (kind !== "membrane" || profile) continue;
      const buildUp = zones.find((zone) => zone.id === id)?.buildUp;
      const layer = project.buildUps
        .find((one) => one.id === buildUp)
        ?.layers.find((one) => one.kind === "membrane");
      const { width } = layer?.roll ?? USUAL_ROLL;
      const key = `${cut.thickness} ${width}`;
      const areaM2 = (sums.get(key)?.areaM2 ?? 0) + (cut.length * width) / MM2_PER_M2;
      sums.set(key, { thickness: cut.thickness, width, areaM2 });
    }
  }
  return [...sums.values()];
}
