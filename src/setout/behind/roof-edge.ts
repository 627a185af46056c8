/** The cladding's upper edge under the roof: how much room is left there, and whether the air that the mesh lets by gets out. */
import { type Finding, finding } from "../../findings/finding.ts";
import { recessLinedBy } from "../../project/lookup.ts";
import { message } from "../../text/message.ts";
import { snap } from "../../units/length.ts";
import type { Vent } from "../facade.ts";
import type { Wall } from "./wall.ts";

/** A slot a millimetre wide is 10 cm² in a metre. */
const CM2_PER_M_OF_MM = 10;

export function roofEdge({ project, face, path, grounds }: Wall, vents: readonly Vent[]): Finding[] {
  const tops = vents.filter(({ position }) => position === "top");
  // Under the soffit of a recess its own finding speaks.
  if (tops.length === 0 || recessLinedBy(project, face.id)) return [];
  const top = Math.max(...grounds.map(({ bounds }) => bounds.y[1]));
  const room = face.eaves ? snap(face.eaves.y - top) : project.roof?.topVentGap;
  const where = { path, face: face.id };
  const source = { kind: "common practice" } as const;
  if (room === undefined) {
    return [
      finding({
        code: "S025",
        outcome: "cannot evaluate",
        where,
        says: message("setout.roof-edge.unknown", { face: face.id }),
        hint: message("setout.roof-edge.enter"),
        source,
      }),
    ];
  }
  const free = Math.max(...tops.map(({ netCm2PerM }) => netCm2PerM));
  const slot = Math.round(Math.max(0, room) * CM2_PER_M_OF_MM * 10) / 10;
  const open = slot >= free;
  return [
    finding({
      code: "S025",
      outcome: open ? "pass" : "attention",
      where,
      says: message(open ? "setout.roof-edge.open" : "setout.roof-edge.tight", {
        face: face.id,
        room,
        slot,
        free,
      }),
      ...(!open && { hint: message("setout.roof-edge.hint", { least: snap(free / CM2_PER_M_OF_MM) }) }),
      demand: slot,
      limit: free,
      unit: "cm²/m",
      ratio: slot > 0 ? Math.round((free / slot) * 1000) / 1000 : free,
      working: {
        formula: "A = 10 · s",
        inputs: [
          { symbol: "s", meaning: message("setout.roof-edge.room"), value: room, unit: "mm", basis: "given" },
          {
            symbol: "A_m",
            meaning: message("setout.roof-edge.mesh"),
            value: free,
            unit: "cm²/m",
            basis: "derived",
          },
        ],
        substituted: `10 · ${room} = ${slot}`,
      },
      source,
    }),
  ];
}
