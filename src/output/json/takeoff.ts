/** A take-off in its published shape. */
import type { Finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import type { OrderLine, Takeoff } from "../../takeoff/model.ts";
import { type Reader, say } from "../../text/say.ts";
import { findingJson } from "./finding.ts";
import type { TakeoffJson } from "./shapes/takeoff.ts";

export function takeoffJson(
  { project, takeoff, findings }: { project: Project; takeoff: Takeoff; findings: readonly Finding[] },
  reader: Reader,
): TakeoffJson {
  const {
    pieces,
    battens,
    screws,
    areas,
    masses,
    massKg,
    packers,
    closures,
    flashings,
    gaskets,
    pans,
    sleeves,
    layers,
    finishes,
    order,
  } = takeoff;
  const lineJson = ({ item, ...line }: OrderLine) => ({ item: say(item, reader), key: item.key, ...line });
  return {
    schemaVersion: 1,
    pieces: copies(pieces),
    battens: battens.map((one) => ({ ...one, screws: copies(one.screws), packers: copies(one.packers) })),
    screws: copies(screws),
    areas: copies(areas),
    masses: copies(masses),
    massKg,
    packers: copies(packers),
    closures: copies(closures),
    flashings: copies(flashings),
    gaskets: copies(gaskets),
    pans: copies(pans),
    sleeves: copies(sleeves),
    layers: copies(layers),
    finishes: copies(finishes),
    order: {
      ...order,
      lines: order.lines.map(lineJson),
      consumables: order.consumables.map(lineJson),
    },
    findings: findings.map((finding) => findingJson(finding, { reader, waivers: project.waivers })),
  };
}

/** Copies that may be changed, as the shapes have them. */
function copies<Line extends object>(lines: readonly Line[]): Line[] {
  return lines.map((line) => ({ ...line }));
}
