/** `outerleaf cut`: what is sawn from which sheet, length and board of the pile, how good that is, and what is short. */

import { lotSpares, SPARE_SHARE } from "../../cutting/facade/lot-spares.ts";
import type { CutPlan, LengthPart, SheetPart } from "../../cutting/facade/plan.ts";
import { type Recut, recut, unknownSince } from "../../cutting/facade/recut.ts";
import { countsOf, countsSaid } from "../../cutting/facade/spoiled.ts";
import { design } from "../../design.ts";
import { cutJson } from "../../output/json/cut.ts";
import { countLine, printFindings, unsettled } from "../../output/report/findings.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade } from "../../setout/facade.ts";
import { type Message, message } from "../../text/message.ts";
import { type Reader, say, sayLength } from "../../text/say.ts";
import { type Answer, isRefusal, type Refusal } from "../answer.ts";
import { cutOnTheWay } from "../cut-on-the-way.ts";
import { exitOf } from "../exit.ts";
import type { Job } from "../job.ts";
import { openProject } from "../open-project.ts";
import { readSince } from "../since-then.ts";

export async function command(job: Job): Promise<Answer> {
  const opened = await openProject(job);
  if (isRefusal(opened)) return opened;
  const { project, reader } = opened;
  job.progress(message("cli.doing.design"));
  const { facade } = design(project);
  const first = cutOnTheWay(job, project, facade);
  const again = await cutAgain(job, { project, facade, former: first.plan });
  if (again !== undefined && isRefusal(again)) return again;
  const { plan, findings } = again?.outcome ?? first;
  const begun = again?.begun ?? [];
  const options = { reader, waivers: project.waivers };
  return {
    exit: exitOf(findings, project.waivers),
    json: job.options.json ? cutJson({ project, plan, findings, begun }, reader) : undefined,
    text: [
      ...begun.map(({ stock, done, still }) =>
        say(
          message("cli.cut.begun", { stock, count: done.length, still: still.length, marks: still }),
          reader,
        ),
      ),
      ...(plan?.spoiled ? spoiledLines(plan, plan.spoiled, { project, reader }) : []),
      ...(plan ? planLines(plan, project, reader) : [say(message("cli.cut.refused"), reader)]),
      "",
      printFindings(unsettled(findings), options) + countLine(findings, options),
      "",
    ].join("\n"),
  };
}

/** The plan after what `--since` tells; undefined without it, or where there is no plan to go on from. */
async function cutAgain(
  { options, io }: Job,
  { project, facade, former }: { project: Project; facade: Facade; former: CutPlan | undefined },
): Promise<Recut | Refusal | undefined> {
  if (options.since === undefined || former === undefined) return undefined;
  const since = await readSince(options.since, io.cwd);
  if (isRefusal(since)) return since;
  const unknown = unknownSince(project, facade, { former, since });
  const names = [...unknown.cut, ...unknown.brokenSheets.map(String), ...unknown.spoiltBoards];
  if (names.length > 0) {
    return {
      refused: message("cli.refused.since-unknown", { file: options.since, names }),
      hint: message("cli.hint.since"),
    };
  }
  return recut(project, facade, { former, since });
}

/** What the file tells of as spoiled, and what is sawn without it. */
function spoiledLines(
  plan: CutPlan,
  { stock, before }: NonNullable<CutPlan["spoiled"]>,
  { project, reader }: { project: Project; reader: Reader },
): string[] {
  if (!before) return [];
  const { currency } = project.stock;
  const values = {
    count: stock.length,
    before: countsSaid(before, currency),
    after: countsSaid(countsOf(plan), currency),
  };
  return [say(message("cli.cut.spoiled", values), reader)];
}

function planLines(plan: CutPlan, project: Project, reader: Reader): string[] {
  return [
    ...plan.sheets.flatMap((part) => sheetLines(part, project, reader)),
    ...[...plan.lengths, ...plan.boards.bought].flatMap((part) => lengthLines(part, project, reader)),
    ...pileLines(plan, reader),
  ];
}

function claimLine(
  {
    result,
    costIn,
  }: Pick<SheetPart | LengthPart, "costIn"> & { result: SheetPart["result"] | LengthPart["result"] },
  { stock }: Project,
): Message {
  const unit = costIn === "money" ? stock.currency : costIn === "m2" ? "m²" : "m";
  const { cost, bound } = result;
  const key = bound.proven ? "cli.cut.proven" : "cli.cut.bound";
  return message(key, { cost, bound: bound.bound, gap: bound.gap * 100, unit });
}

function sheetLines(part: SheetPart, project: Project, reader: Reader): string[] {
  const { sheets } = part.result.plan;
  return [
    say(
      message("cli.cut.sheets", { material: part.material, thickness: part.thickness, count: sheets.length }),
      reader,
    ),
    `  ${say(claimLine(part, project), reader)}`,
    `  ${say(message("cli.cut.settings", { count: part.settings }), reader)}`,
    ...sheets.map(({ stockId, index, placements }) => {
      const pieces = placements.map(
        ({ demandId, width, height }) =>
          `${demandId} ${sayLength(width, reader)} × ${sayLength(height, reader)}`,
      );
      return `  ${stockId} #${index + 1}: ${pieces.join(", ")}`;
    }),
  ];
}

function lengthLines(part: LengthPart, project: Project, reader: Reader): string[] {
  const { bars } = part.result.plan;
  const { use, thickness, width } = part;
  return [
    say(message(`cli.cut.${use}`, { thickness, width, count: bars.length }), reader),
    `  ${say(claimLine(part, project), reader)}`,
    `  ${say(message("cli.cut.settings", { count: part.settings }), reader)}`,
    ...bars.map(
      ({ stockId, index, pieces }) =>
        `  ${stockId} #${index + 1}: ${pieces.map((one) => pieceText(one, reader)).join(", ")}`,
    ),
  ];
}

function pieceText(
  { demandId, from, to }: { demandId: string; from: number; to: number },
  reader: Reader,
): string {
  return `${demandId} ${sayLength(to - from, reader)}`;
}

function pileLines({ rips, boards }: CutPlan, reader: Reader): string[] {
  const found = boards.toFind.map(({ cladding, width, thickness, pieces }) =>
    say(message("cli.cut.to-find", { cladding, width, thickness, count: pieces.length }), reader),
  );
  if (rips === undefined) return found;
  const strips = new Map(rips.result.strips.map((strip) => [strip.id, strip]));
  return [
    say(message("cli.cut.pile", { count: rips.result.rips.boards.length }), reader),
    ...rips.result.rips.boards.map(({ boardId, strips: own }) => {
      const widths = own.map(({ across }) => sayLength(across.to - across.from, reader));
      return `  ${boardId}: ${widths.join(" + ")}`;
    }),
    ...rips.result.lengths.plan.bars.map(({ stockId, pieces }) => {
      const board = strips.get(stockId)?.board ?? stockId;
      return `  ${board} ${stockId}: ${pieces.map((one) => pieceText(one, reader)).join(", ")}`;
    }),
    ...lotSpares(rips).map(({ lot, cutM2, share }) =>
      say(
        message(share < SPARE_SHARE.least ? "cli.cut.spare-short" : "cli.cut.spare", {
          lot,
          area: cutM2,
          percent: share * 100,
          least: SPARE_SHARE.least * 100,
          usual: SPARE_SHARE.usual * 100,
        }),
        reader,
      ),
    ),
    ...found,
  ];
}
