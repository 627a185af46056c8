/** A take-off in its published shape. */
import type { Finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import type { OrderLine, Takeoff } from "../../takeoff/model.ts";
import { type Reader, say } from "../../text/say.ts";
import { mapped } from "../pieces.ts";
import { findingJson } from "./finding.ts";
import { collected, type Listed } from "./print.ts";
import type { TakeoffJson } from "./shapes/takeoff.ts";

interface TakeoffFacts {
  readonly project: Project;
  readonly takeoff: Takeoff;
  readonly findings: readonly Finding[];
}

export function takeoffJson(facts: TakeoffFacts, reader: Reader): TakeoffJson {
  return collected<TakeoffJson>(takeoffListed(facts, reader));
}

export function takeoffListed(
  { project, takeoff, findings }: TakeoffFacts,
  reader: Reader,
): Listed<TakeoffJson> {
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
    battens: mapped(battens, (one) => ({
      ...one,
      screws: [...copies(one.screws)],
      packers: [...copies(one.packers)],
    })),
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
    findings: mapped(findings, (finding) => findingJson(finding, { reader, waivers: project.waivers })),
  };
}

/** Copies that may be changed, as the shapes have them. */
function copies<Line extends object>(lines: readonly Line[]): Iterable<Line> {
  return mapped(lines, (line) => ({ ...line }));
}
