/** What a variant of the project comes to, in the figures by which variants are weighed, and how two of them differ. */
import type { Design } from "../../design.ts";
import type { Finding, Outcome } from "../../findings/finding.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import { type Message, message } from "../../text/message.ts";

export interface Weighed {
  readonly design: Design;
  readonly findings: readonly Finding[];
  /** Undefined until it is cut. */
  readonly takeoff: Takeoff | undefined;
}

export interface Figure {
  readonly label: Message;
  /** Undefined where the variant has none, or none yet. */
  readonly value: Message | undefined;
}

export function figuresOf({ design, findings, takeoff }: Weighed): Figure[] {
  const pieces = design.facade.faces.flatMap((face) => face.pieces);
  const boards = pieces.filter(({ kind }) => kind === "board");
  const gaps = design.facade.rods.flatMap(({ segments }) => segments.map(({ gap }) => gap));
  const count = (outcome: Outcome): number => findings.filter((one) => one.outcome === outcome).length;
  const number = (value: number): Message => message("page.variants.number", { value });
  const light = brightest(findings);
  return [
    row("sheets", number(pieces.filter(({ kind }) => kind === "sheet").length)),
    row(
      "boards",
      message("page.variants.boards-are", {
        count: boards.length,
        run: boards.reduce((sum, { cut }) => sum + cut.length, 0) / 1000,
      }),
    ),
    row(
      "gap",
      gaps.length > 0
        ? message("page.variants.gap-is", { from: Math.min(...gaps), to: Math.max(...gaps) })
        : undefined,
    ),
    row("screws", number(pieces.reduce((sum, { fixings }) => sum + fixings.length, 0))),
    row(
      "light",
      light && message("page.variants.light-is", { dose: light.demand ?? 0, unit: light.unit ?? "" }),
    ),
    row(
      "cost",
      takeoff &&
        message("page.variants.cost-is", {
          sum: takeoff.order.sum,
          currency: takeoff.order.currency,
          without: takeoff.order.withoutPrice,
        }),
    ),
    row("mass", takeoff && message("page.variants.mass-is", { mass: takeoff.massKg })),
    row("fails", number(count("fail"))),
    row("cannot", number(count("cannot evaluate"))),
    row("attention", number(count("attention"))),
    row("provisional", number(findings.filter(({ provisional }) => provisional).length)),
  ];
}

function row(name: string, value: Message | undefined): Figure {
  return { label: message(`page.variants.${name}`), value };
}

/** The largest ultraviolet dose that a membrane takes in a year (P021). */
function brightest(findings: readonly Finding[]): Finding | undefined {
  return findings
    .filter(({ code, demand }) => code === "P021" && demand !== undefined)
    .reduce<Finding | undefined>(
      (most, one) => (most && (most.demand ?? 0) >= (one.demand ?? 0) ? most : one),
      undefined,
    );
}

/** What is to be settled in one and not, or not so, in the other. */
export function settledApart(
  one: readonly Finding[],
  other: readonly Finding[],
): { readonly only: readonly Finding[]; readonly gone: readonly Finding[] } {
  const open = (findings: readonly Finding[]): Map<string, Finding> =>
    new Map(
      findings
        .filter(({ outcome }) => outcome !== "pass" && outcome !== "not applicable")
        .map((finding) => [placeKey(finding), finding]),
    );
  const [own, its] = [open(one), open(other)];
  return {
    only: [...own].filter(([key]) => !its.has(key)).map(([, finding]) => finding),
    gone: [...its].filter(([key]) => !own.has(key)).map(([, finding]) => finding),
  };
}

/** A finding of the same rule, outcome and place is the same, whatever its numbers. */
function placeKey({ code, outcome, where }: Finding): string {
  return JSON.stringify([code, outcome, where.face, where.zone, where.opening]);
}
