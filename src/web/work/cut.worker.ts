/** Cuts a project's facade and takes it off beside the page: it takes longer than a frame. */
import type { CutOutcome } from "../../cutting/facade/cut-facade.ts";
import { createCutMemo } from "../../cutting/facade/cut-memo.ts";
import { facadePlans, type PlanSoFar } from "../../cutting/facade/facade-plans.ts";
import { designFile, type FileDesign } from "../../design.ts";
import { createDrawMemo } from "../../output/drawings/draw-memo.ts";
import { type DrawingSheet, drawnSet } from "../../output/drawings/drawing-sheets.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import type { CutAnswer, CutAsk, CutPost, SentSheet } from "./cutter.ts";
import { createSecond, secondWorker } from "./second.ts";

/** Milliseconds of search from one look at what is newly asked to the next; a look takes up to four, as browsers hold timers back. */
const BREATH = 40;
/** Milliseconds from one plan on the way to the next: plans that nobody can follow are not sent. */
const PLANS_APART = 120;

const faces = createFaceMemo({ spare: 24, shareds: 2 });
const searched = createCutMemo();
const second = createSecond(secondWorker);
const drawn = createDrawMemo();
/** What the page has of each sheet. */
const sent = new Map<string, DrawingSheet>();
/** Of the newest question. */
let newest = 0;

type Designed = Extract<FileDesign, { kind: "designed" }>;

/** Undefined where a newer question has come meanwhile. */
async function outcomeOf({ id, onTheWay }: CutAsk, made: Designed): Promise<CutOutcome | undefined> {
  const { project, facade } = made.design;
  const plans = facadePlans(project, facade, searched, second);
  let seen: PlanSoFar | undefined;
  let plansDue = 0;
  let breathDue = performance.now() + BREATH;
  for (let next = plans.next(); ; next = plans.next()) {
    if (next.done) return next.value;
    const now = performance.now();
    if (onTheWay && next.value !== seen && now >= plansDue) {
      seen = next.value;
      post({ id, last: false, answer: answerOf(made, next.value()) });
      plansDue = performance.now() + PLANS_APART;
    }
    if (second.waits()) await second.heard();
    else if (now < breathDue) continue;
    else await new Promise((heard) => setTimeout(heard));
    if (id !== newest) return undefined;
    breathDue = performance.now() + BREATH;
  }
}

function answerOf({ design }: Designed, { plan, findings }: CutOutcome): NonNullable<CutAnswer> {
  return { plan, findings, takeoff: takeOff(design.project, design.facade, plan) };
}

/** The last answer to a question; nothing where a newer one has come meanwhile. */
async function answer(ask: CutAsk): Promise<CutPost | undefined> {
  const { id, name, document, drawFor, drawOnly, withDesign } = ask;
  const made = designFile({ name, document }, { faces });
  if (made.kind === "refused") return { id, last: true, answer: undefined };
  const outcome = await outcomeOf(ask, made);
  if (!outcome) return undefined;
  const { design } = made;
  const { plan, findings, takeoff } = answerOf(made, outcome);
  const own = [...made.readFindings, ...design.findings];
  const set =
    drawFor &&
    drawnSet(
      { design, findings: [...own, ...findings], reader: drawFor, plan, takeoff, only: drawOnly },
      drawn,
    );
  return {
    id,
    last: true,
    answer: {
      plan,
      findings,
      takeoff,
      ...(set && { drawings: set.sheets.map(unlessSent), leftOut: set.leftOut }),
      ...(withDesign && { designed: { design, findings: own } }),
    },
  };
}

/** The picture of a sheet is long, and most are those of before. */
function unlessSent(sheet: DrawingSheet): SentSheet {
  if (sent.get(sheet.name) !== sheet) return sheet;
  const { svg: _, ...known } = sheet;
  return known;
}

function post(reply: CutPost): void {
  self.postMessage(reply);
}

self.addEventListener("message", ({ data }: MessageEvent<CutAsk>) => {
  newest = data.id;
  second.stop();
  answer(data)
    .catch((): CutPost => ({ id: data.id, last: true, answer: undefined }))
    .then((reply) => {
      if (!reply) return;
      post(reply);
      for (const sheet of reply.answer?.drawings ?? []) if ("svg" in sheet) sent.set(sheet.name, sheet);
    });
});
