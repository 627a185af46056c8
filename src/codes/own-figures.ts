/** What the project says of figures of the catalogue, and what is wrong with it. */
import { highest, lowest } from "../catalogue/figure.ts";
import {
  catalogueFigure,
  type FigureFault,
  figureFault,
  figureKeys,
  type OwnFigure,
} from "../catalogue/own-figures.ts";
import { sourcedRecords } from "../catalogue/records.ts";
import type { Source } from "../findings/finding.ts";
import { nearest } from "../project/nearest.ts";
import type { Project } from "../project/schema/project.ts";
import { sourceOf } from "./rule-value.ts";

/** The catalogue has no such figure; `near` may be meant. */
interface UnknownFigure {
  readonly kind: "unknown";
  readonly near: string | undefined;
}

export interface FigureDemand {
  /** As the project file writes it. */
  readonly key: string;
  readonly value: OwnFigure["value"];
  /** What the catalogue gives; undefined where it has no such figure. */
  readonly catalogue: OwnFigure["value"] | undefined;
  readonly unit: string;
  readonly fault: FigureFault | UnknownFigure | undefined;
  /** Ten times the catalogue's or more, or a tenth or less. */
  readonly far: boolean;
  readonly source: Source;
}

export function figureDemands({ figures }: Pick<Project, "figures">): FigureDemand[] {
  return Object.entries(figures ?? {}).map(([key, own]) => {
    const known = catalogueFigure(key);
    return {
      key,
      value: own.value,
      catalogue: known && ("key" in known ? known.key : known.value),
      unit: own.unit ?? "",
      fault: isRecord(key) ? figureFault(key, own) : { kind: "unknown", near: nearestKey(key) },
      far: known !== undefined && !("key" in known) && isFar(own.value, known),
      source: sourceOf({ source: own.source ?? "", basis: "given" }),
    };
  });
}

function isRecord(key: string): boolean {
  return sourcedRecords().some(({ file, path }) => `${file}.${path}` === key);
}

const FAR = 10;

function isFar(own: OwnFigure["value"], known: Parameters<typeof lowest>[0]): boolean {
  if (typeof own === "string") return false;
  if (known.unit === "°C") return false;
  if (typeof own === "number" && own < 0) return isFar(-own, { ...known, value: -(lowest(known) ?? 0) });
  const [least, most] = typeof own === "number" ? [own, own] : [own.min, own.max];
  const [from, to] = [lowest(known), highest(known)];
  const over = (most ?? 0) >= FAR * (to ?? Infinity);
  return over || (least ?? Infinity) * FAR <= (from ?? 0);
}

/** Names are long: what is near is told by their last two parts, within the file that the first names. */
function nearestKey(key: string): string | undefined {
  const keys = figureKeys();
  const tail = (name: string): string => name.split(".").slice(-2).join(".");
  const near = nearest(tail(key), keys.map(tail));
  return keys.find((one) => tail(one) === near);
}
