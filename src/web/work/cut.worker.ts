/** Cuts a project's facade and takes it off beside the page: it takes longer than a frame. */
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { createCutMemo } from "../../cutting/facade/cut-memo.ts";
import { designFile } from "../../design.ts";
import { createDrawMemo } from "../../output/drawings/draw-memo.ts";
import { type DrawingSheet, drawnSet } from "../../output/drawings/drawing-sheets.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import type { CutAnswer, CutRequest, SentSheet } from "./cutter.ts";

const faces = createFaceMemo({ spare: 24, shareds: 2 });
const searched = createCutMemo();
const drawn = createDrawMemo();
/** What the page has of each sheet. */
const sent = new Map<string, DrawingSheet>();

function cut({ name, document, drawFor, drawOnly, withDesign }: CutRequest): CutAnswer {
  const made = designFile({ name, document }, { faces });
  if (made.kind === "refused") return undefined;
  const { design } = made;
  const { plan, findings } = cutFacade(design.project, design.facade, searched.solversFor(design.project));
  const takeoff = takeOff(design.project, design.facade, plan);
  const own = [...made.readFindings, ...design.findings];
  const set =
    drawFor &&
    drawnSet(
      { design, findings: [...own, ...findings], reader: drawFor, plan, takeoff, only: drawOnly },
      drawn,
    );
  return {
    plan,
    findings,
    takeoff,
    ...(set && { drawings: set.sheets.map(unlessSent), leftOut: set.leftOut }),
    ...(withDesign && { designed: { design, findings: own } }),
  };
}

/** The picture of a sheet is long, and most are those of before. */
function unlessSent(sheet: DrawingSheet): SentSheet {
  if (sent.get(sheet.name) !== sheet) return sheet;
  const { svg: _, ...known } = sheet;
  return known;
}

self.addEventListener("message", ({ data }: MessageEvent<CutRequest>) => {
  let reply: CutAnswer;
  try {
    reply = cut(data);
  } catch {
    reply = undefined;
  }
  self.postMessage(reply);
  for (const sheet of reply?.drawings ?? []) if ("svg" in sheet) sent.set(sheet.name, sheet);
});
