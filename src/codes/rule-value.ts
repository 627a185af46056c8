/** A figure of a code or rule set as a plain value, with the place where it stands. */
import type {
  Basis as CatalogueBasis,
  Figure as CatalogueFigure,
  Jurisdiction,
} from "../catalogue/figure.ts";
import { figureName } from "../catalogue/own-figures.ts";
import { source as sourceByKey } from "../catalogue/sources.ts";
import type { Basis, Source } from "../findings/finding.ts";
import type { Project } from "../project/schema/project.ts";

export type { Jurisdiction } from "../catalogue/figure.ts";

export interface RuleValue {
  /** Id of the rule set; the messages name it. */
  readonly id: string;
  readonly jurisdiction: Jurisdiction;
  /** Whether it is a rule of the project's own jurisdiction. */
  readonly own: boolean;
  /** In the unit that its list names. */
  readonly value: number;
  readonly basis: Basis;
  readonly source: Source;
}

/** The catalogue's name of the project's jurisdiction; undefined for `other`. */
export function jurisdictionOf(project: Pick<Project, "site">): Jurisdiction | undefined {
  const { jurisdiction } = project.site;
  if (jurisdiction === "other") return undefined;
  return jurisdiction === "united-states" ? "usa" : jurisdiction;
}

/** Where a figure stands: the catalogue's document, or what the project says of its own. */
export function sourceOf(figure: Pick<CatalogueFigure, "source" | "basis"> | undefined): Source {
  const name = figure && figureName(figure);
  return { ...placeOf(figure), ...(name === undefined ? {} : { figures: [name] }) };
}

function placeOf(figure: Pick<CatalogueFigure, "source" | "basis"> | undefined): Source {
  if (figure?.basis !== "given") return documentOf(figure?.source ?? "common-practice");
  return figure.source === "" ? { kind: "your project" } : { kind: "document", document: figure.source };
}

/** Names of figures that a project file can replace. */
export function namesOf(...records: readonly (object | undefined)[]): string[] {
  return records.flatMap((record) => (record && figureName(record)) ?? []);
}

/** The document behind a source key of the catalogue. */
export function documentOf(key: string): Source {
  const found = sourceByKey(key);
  if (!found || found.kind === "memory" || found.kind === "common-practice")
    return { kind: "common practice" };
  return {
    kind: "document",
    document: found.edition ? `${found.document}, ${found.edition}` : found.document,
    ...(found.clause ? { clause: found.clause } : {}),
  };
}

/** What a rule prints is given by it; only a rule that nobody has looked up is not. */
export function ruleBasis(basis: CatalogueBasis): Basis {
  return basis === "memory" || basis === "invented"
    ? "memory"
    : basis === "common-practice"
      ? "typical"
      : "given";
}

/** A property of a material in general stands in for that of the piece in hand: typical at best, save the user's own. */
export function materialBasis(basis: CatalogueBasis): Basis {
  if (basis === "given") return "given";
  return basis === "memory" || basis === "invented" ? "memory" : "typical";
}

/** A figure of the catalogue as a plain value. */
export interface FigureValue {
  /** In the figure's own unit. */
  readonly value: number;
  readonly basis: Basis;
  /** Its name, where a project file can replace it. */
  readonly figures: readonly string[];
}

/** As it judges a wall in general: the user's own is given, what a document or the trade prints is typical. */
export function figureValue(figure: Pick<CatalogueFigure, "value" | "basis">): FigureValue {
  return { value: figure.value, basis: materialBasis(figure.basis), figures: namesOf(figure) };
}

/** The same of a factor that a code prints: given by it, unless it is from memory. */
export function codeValue(figure: Pick<CatalogueFigure, "value" | "basis">): FigureValue {
  return { value: figure.value, basis: ruleBasis(figure.basis), figures: namesOf(figure) };
}

/** The weaker of two: what rests on both is no better than it. */
export function weaker(a: Basis, b: Basis): Basis {
  const order: readonly Basis[] = ["given", "derived", "typical", "memory"];
  return order.indexOf(a) >= order.indexOf(b) ? a : b;
}

export function ruleValue(
  figure: CatalogueFigure,
  of: { id: string; jurisdiction: Jurisdiction; project: Pick<Project, "site"> },
): RuleValue {
  return {
    id: of.id,
    jurisdiction: of.jurisdiction,
    own: of.jurisdiction === jurisdictionOf(of.project),
    value: figure.value,
    basis: ruleBasis(figure.basis),
    source: sourceOf(figure),
  };
}

/** Own rules first, the rest in the catalogue's order. */
export function ownFirst(values: readonly RuleValue[]): RuleValue[] {
  return [...values.filter(({ own }) => own), ...values.filter(({ own }) => !own)];
}
