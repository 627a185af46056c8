/**
 * Figures that a project file puts in place of the catalogue's, named `<file>.<path>` as `docs/sources.md` prints them. The
 * catalogue itself never changes: what is read is a copy that holds them, with basis `given`.
 */
import type { Figure, RangeFigure, Statement } from "./figure.ts";
import { type Catalogue, figureFiles } from "./files.ts";
import { isSourced, label, sourcedRecords } from "./records.ts";

export interface OwnFigure {
  /** A number, a span of numbers, or the word of a class such as `heartwood-resistant`. */
  readonly value: number | string | { readonly min?: number | undefined; readonly max?: number | undefined };
  /** The catalogue's own unit; absent for words and plain ratios. */
  readonly unit?: string | undefined;
  /** Where it stands, in the user's words. */
  readonly source?: string | undefined;
}

export type OwnFigures = Readonly<Record<string, OwnFigure>>;

/** Why a figure is left aside. */
export type FigureFault =
  /** No rule reads it; `near` is what is read in its place. */
  | { readonly kind: "unread"; readonly near?: string | undefined }
  | { readonly kind: "unit"; readonly unit: string }
  | { readonly kind: "number" | "span" | "nothing" | "share" }
  | { readonly kind: "word"; readonly words: readonly string[] };

type Overridable = Figure | RangeFigure | Statement;

/** Every figure that a rule, setting-out or the take-off reads; a test holds the list to what they do. */
const READ: readonly RegExp[] = [
  /^species\.rules\.(?:coefficientAcrossGrainSoftwood|fibreSaturation)$/,
  /^species\.species\.[^.]+\.(?:shrinkageTangential|coefficientTangential|fibreSaturation|durability)$/,
  /^species\.species\.[^.]+\.(?:specificGravityAt12|specificGravityFastener|densityAt12)$/,
  /^clearances\.clearances\.[a-z-]+-(?:ground|ground-unpaved)\.figures\.0$/,
  /^clearances\.clearances\.(?:germany-ground-gravel-strip|new-zealand-ground-paved|(?:usa|new-zealand)-deck)\.figures\.0$/,
  /^cavity-rules\.ruleSets\.[^.]+\.(?:depth|depthOpenJoint|ventArea|ventShareOfCavity|depthPerHeight|depthRange)$/,
  /^cavity-rules\.fireStops\.[^.]+\.(?:horizontal|vertical|anyDirection|exemptDepth)$/,
  /^proportion-rules\.proportions\.[^.]+\.(?:widthToThickness|leastThickness)$/,
  /^proportion-rules\.proportions\.bs-8605-1\.largestWidth$/,
  /^proportion-rules\.battenCentres\.[^.]+\.perThickness$/,
  /^climates\.drivenRain\.(?:moderate|severe)$/,
  /^meshes\.openings\.[^.]+\.opening$/,
  /^finishes\.coverage\.[^.]+\.perCoat$/,
  /^light\./,
  /^heat\./,
  /^code-packs\./,
  /^fasteners\.corrosion\./,
];

/** A figure that is read only where its wood or rule set lacks the ones named. */
const BEHIND: Readonly<Record<string, readonly string[]>> = {
  coefficientTangential: ["shrinkageTangential"],
  specificGravityFastener: ["specificGravityAt12"],
  densityAt12: ["specificGravityAt12", "specificGravityFastener"],
  depth: ["depthOpenJoint"],
};

/** Shares of a whole; those in percent are told by their unit. */
const SHARE = /^light\.(?:ground\.(?:bare|snow)|ultravioletShare)\.|\.(?:forwardShare|coreShare)$/;

/** The catalogue with the project's own figures in it; those with a fault are left out. */
export function catalogueWith(own: OwnFigures | undefined): Catalogue {
  return Object.entries(own ?? {}).reduce(
    (catalogue, [key, figure]) =>
      figureFault(key, figure) ? catalogue : replaced(catalogue, key.split("."), { ...figure, key }),
    figureFiles,
  );
}

/** The figure of the catalogue that a key names, where a rule reads it. */
export function catalogueFigure(key: string): Overridable | undefined {
  return isRead(key) && readInstead(key) === undefined ? at(key) : undefined;
}

/** Names of the figures that can be replaced, by their records, and of those that stand in their place. */
const NAMES = new WeakMap<object, string>(
  figureKeys().flatMap((key): [object, string][] => {
    const record = at(key);
    return record ? [[record, key]] : [];
  }),
);

/** The name of a figure, of the catalogue or of a project's own, where a project file can replace it. */
export function figureName(record: object): string | undefined {
  return NAMES.get(record);
}

/** What is wrong with an own figure; undefined where it can stand. */
export function figureFault(key: string, figure: OwnFigure): FigureFault | undefined {
  const record = isRead(key) ? at(key) : undefined;
  if (record === undefined) return { kind: "unread" };
  const instead = readInstead(key);
  if (instead !== undefined) return { kind: "unread", near: instead };
  if ("key" in record) {
    const words = figureWords(key);
    return words.includes(String(figure.value)) ? undefined : { kind: "word", words };
  }
  if ((figure.unit ?? "1") !== record.unit) return { kind: "unit", unit: record.unit };
  const most = record.unit === "%" ? 100 : SHARE.test(key) ? 1 : Infinity;
  const fault = shapeFault(record, figure.value);
  return fault ?? (greatest(figure.value) > most ? { kind: "share" } : undefined);
}

function shapeFault(record: Figure | RangeFigure, value: OwnFigure["value"]): FigureFault | undefined {
  if (typeof value === "number") return meansSomething(record, value) ? undefined : { kind: "nothing" };
  if (typeof record.value === "number") return { kind: "number" };
  if (typeof value === "string") return { kind: "span" };
  const { min, max } = record.value;
  const whole =
    (min === undefined) === (value.min === undefined) && (max === undefined) === (value.max === undefined);
  if (!whole || (value.min ?? 0) > (value.max ?? Infinity)) return { kind: "span" };
  return (value.min ?? 1) > 0 && (value.max ?? 1) > 0 ? undefined : { kind: "nothing" };
}

/** A temperature can be anything; of what else is counted, nothing and the other side of it is no figure. */
function meansSomething({ unit, value: known }: Figure | RangeFigure, value: number): boolean {
  return unit === "°C" || (typeof known === "number" && known < 0 ? value < 0 : value > 0);
}

function greatest(value: OwnFigure["value"]): number {
  return typeof value === "object" ? (value.max ?? value.min ?? 0) : Number(value);
}

/** Keys of the figures that can be replaced, in the order of the files. */
export function figureKeys(): string[] {
  return sourcedRecords()
    .map(({ file, path }) => `${file}.${path}`)
    .filter((key) => catalogueFigure(key) !== undefined);
}

function isRead(key: string): boolean {
  return READ.some((pattern) => pattern.test(key));
}

function readInstead(key: string): string | undefined {
  const [, owner = "", name = ""] = /^(.*)\.([^.]+)$/.exec(key) ?? [];
  return (BEHIND[name] ?? [])
    .map((better) => `${owner}.${better}`)
    .find((better) => at(better) !== undefined);
}

/** Words of the classes that stand under the same name elsewhere in the file. */
export function figureWords(key: string): string[] {
  const name = key.slice(key.lastIndexOf("."));
  const words = sourcedRecords().flatMap(({ path, record }) =>
    path.endsWith(name) && "key" in record ? [record.key] : [],
  );
  return [...new Set(words)];
}

function at(key: string): Overridable | undefined {
  const node = key.split(".").reduce<unknown>(child, figureFiles);
  const known = typeof node === "object" && node !== null && isSourced(node);
  return known && ("key" in node || "value" in node) ? (node as Overridable) : undefined;
}

function child(node: unknown, step: string): unknown {
  if (Array.isArray(node)) return node.find((entry, index) => label(entry, index) === step);
  return typeof node === "object" && node !== null && Object.hasOwn(node, step)
    ? (node as Record<string, unknown>)[step]
    : undefined;
}

interface Named extends OwnFigure {
  readonly key: string;
}

function replaced<Node>(node: Node, [step, ...rest]: readonly string[], own: Named): Node {
  if (step === undefined) {
    const record = ownRecord(node as Overridable, own);
    NAMES.set(record, own.key);
    return record as Node;
  }
  if (Array.isArray(node)) {
    return node.map((entry, index) =>
      label(entry, index) === step ? replaced(entry, rest, own) : entry,
    ) as Node;
  }
  return { ...node, [step]: replaced(child(node, step), rest, own) };
}

function ownRecord(record: Overridable, { value, source = "" }: OwnFigure): Overridable {
  const from = { source, basis: "given" } as const;
  if ("key" in record) return { key: String(value), ...from };
  const span =
    typeof record.value === "number" || typeof value !== "number" ? value : spanOf(record.value, value);
  return { value: span, unit: record.unit, ...from } as Overridable;
}

/** A single number in place of a span stands for each of its bounds. */
function spanOf(span: RangeFigure["value"], value: number): RangeFigure["value"] {
  return Object.fromEntries(Object.keys(span).map((bound) => [bound, value]));
}
