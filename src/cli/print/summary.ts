/** What a builder wants to know at a glance: what goes on the wall, what is sawn from what, what is left to settle. */

import type { CutPlan } from "../../cutting/facade/plan.ts";
import { blocks, type Finding } from "../../findings/finding.ts";
import { outcomeMark } from "../../findings/outcome-mark.ts";
import { countLine, outcomeWord } from "../../output/report/findings.ts";
import type { Project } from "../../project/schema/project.ts";
import { waiverOf } from "../../project/waivers.ts";
import type { Facade, PieceKind } from "../../setout/facade.ts";
import type { Takeoff } from "../../takeoff/model.ts";
import { type Message, message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { table } from "./table.ts";

export interface SummaryFacts {
  readonly project: Project;
  readonly facade: Facade;
  readonly plan: CutPlan | undefined;
  readonly takeoff: Takeoff;
  readonly findings: readonly Finding[];
}

export function summary(facts: SummaryFacts, reader: Reader): string {
  const { project, plan, findings } = facts;
  const tell = (what: Message): string => say(what, reader);
  const rows = [...wallRows(facts), ...(plan ? sawRows(plan) : []), orderRow(facts)];
  return [
    tell(message("cli.start.title", { title: project.title, place: project.site.place })),
    "",
    table(
      rows.map(([label, figure]) => [tell(label), tell(figure)]),
      { indent: 2 },
    ),
    "",
    `  ${countLine(findings, { reader, waivers: project.waivers })}`,
    ...settleLines(findings, project, reader).map((line) => `  ${line}`),
  ].join("\n");
}

type Row = readonly [label: Message, figure: Message];

function wallRows({ facade }: SummaryFacts): Row[] {
  const pieces = facade.faces.flatMap((face) => face.pieces);
  const of = (kind: PieceKind) => pieces.filter((piece) => piece.kind === kind);
  const metres = (kind: PieceKind): number => of(kind).reduce((sum, { cut }) => sum + cut.length, 0) / 1000;
  const massKg = pieces.reduce((sum, piece) => sum + piece.massKg, 0);
  const row = (kind: "sheet" | "board" | "batten", key: string): Row[] =>
    of(kind).length === 0
      ? []
      : [[message(`cli.start.${kind}`), message(key, { count: of(kind).length, metres: metres(kind) })]];
  const screws = pieces.reduce((sum, { fixings }) => sum + fixings.length, 0);
  return [
    [message("cli.start.faces"), message("cli.start.faces-are", { ids: facade.faces.map(({ id }) => id) })],
    ...row("sheet", "cli.start.sheets-are"),
    ...row("board", "cli.start.lengths-are"),
    ...row("batten", "cli.start.lengths-are"),
    [message("cli.start.screws"), message("cli.start.screws-are", { count: screws, massKg })],
  ];
}

function sawRows(plan: CutPlan): Row[] {
  const bought = [...plan.lengths, ...plan.boards.bought];
  const sheets = plan.sheets.reduce((sum, { result }) => sum + result.plan.sheets.length, 0);
  const bars = bought.reduce((sum, { result }) => sum + result.plan.bars.length, 0);
  const metres = bought.reduce((sum, { request, result }) => {
    const lengths = new Map(request.stock.map(({ id, length }) => [id, length]));
    return sum + result.plan.bars.reduce((own, { stockId }) => own + (lengths.get(stockId) ?? 0), 0) / 1000;
  }, 0);
  const ripped = plan.rips?.result.rips.boards.length ?? 0;
  const toFind = plan.boards.toFind.reduce((sum, { pieces }) => sum + pieces.length, 0);
  return [
    [message("cli.start.saw"), message("cli.start.saw-is", { sheets, bars, metres })],
    ...(plan.rips
      ? [[message("cli.start.pile"), message("cli.start.pile-is", { count: ripped })] as const]
      : []),
    ...(toFind > 0
      ? [[message("cli.start.to-find"), message("cli.start.to-find-is", { count: toFind })] as const]
      : []),
    [message("cli.start.cuts"), message("cli.start.cuts-are", { count: cutsOf(plan) })],
  ];
}

function orderRow({ takeoff: { order } }: SummaryFacts): Row {
  const { sum, currency, withoutPrice } = order;
  return [
    message("cli.start.order"),
    message("cli.start.order-is", { sum, currency, without: withoutPrice }),
  ];
}

/** Strokes of the saw: every cut of a sheet's tree, one for each piece cut to length, one for each strip ripped. */
function cutsOf({ sheets, lengths, boards, rips }: CutPlan): number {
  type Tree = (typeof sheets)[number]["result"]["plan"]["sheets"][number]["tree"];
  const inTree = ({ cut, children = [] }: Tree): number =>
    children.reduce((sum, child) => sum + inTree(child), cut ? 1 : 0);
  const inBars = (bars: readonly { readonly pieces: readonly unknown[] }[]): number =>
    bars.reduce((sum, { pieces }) => sum + pieces.length, 0);
  return (
    sheets.flatMap(({ result }) => result.plan.sheets).reduce((sum, { tree }) => sum + inTree(tree), 0) +
    [...lengths, ...boards.bought].reduce((sum, { result }) => sum + inBars(result.plan.bars), 0) +
    (rips ? inBars(rips.result.lengths.plan.bars) : 0) +
    (rips?.result.rips.boards.reduce((sum, { strips }) => sum + strips.length, 0) ?? 0)
  );
}

/** More than these are read in the document; what fails or cannot be evaluated always stands here. */
const SHOWN_KINDS = 10;

/** One line for each kind of thing to settle, by mark and word; what nobody needs to settle stays in the documents. */
function settleLines(findings: readonly Finding[], project: Project, reader: Reader): string[] {
  const open = findings.filter(
    (finding) =>
      (blocks(finding) || finding.outcome === "attention") &&
      waiverOf(finding, project.waivers) === undefined,
  );
  const kinds = new Map<string, Finding[]>();
  for (const finding of open) {
    const kind = `${finding.outcome} ${finding.code} ${finding.says.key}`;
    kinds.set(kind, [...(kinds.get(kind) ?? []), finding]);
  }
  const shown = [...kinds.values()].filter(
    ([first], at) => at < SHOWN_KINDS || (first !== undefined && blocks(first)),
  );
  const more = kinds.size - shown.length;
  const lines = shown.flatMap((alike) => {
    const [first] = alike;
    if (first === undefined) return [];
    const times = alike.length > 1 ? ` ×${alike.length}` : "";
    return [
      `${outcomeMark(first)} ${outcomeWord(first, reader)} ${first.code}${times}: ${say(first.says, reader)}`,
    ];
  });
  return more === 0
    ? lines
    : [...lines, say(message("cli.start.more", { count: more, file: "findings.txt" }), reader)];
}
