/** Cuts a project's facade and takes it off beside the page: it takes longer than a frame. */
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { designFile } from "../../design.ts";
import { drawingSheets } from "../../output/drawings/drawing-sheets.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import type { CutReply, CutRequest } from "./cutter.ts";

const faces = createFaceMemo({ spare: 24, shareds: 2 });

function cut({ name, document, drawFor, drawOnly, withDesign }: CutRequest): CutReply {
  const made = designFile({ name, document }, { faces });
  if (made.kind === "refused") return undefined;
  const { design } = made;
  const { plan, findings } = cutFacade(design.project, design.facade);
  const takeoff = takeOff(design.project, design.facade, plan);
  const own = [...made.readFindings, ...design.findings];
  return {
    plan,
    findings,
    takeoff,
    ...(drawFor && {
      drawings: drawingSheets({
        design,
        findings: [...own, ...findings],
        reader: drawFor,
        plan,
        takeoff,
        only: drawOnly,
      }),
    }),
    ...(withDesign && { designed: { design, findings: own } }),
  };
}

self.addEventListener("message", ({ data }: MessageEvent<CutRequest>) => {
  let reply: CutReply;
  try {
    reply = cut(data);
  } catch {
    reply = undefined;
  }
  self.postMessage(reply);
});
