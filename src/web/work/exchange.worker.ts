/** Designs, cuts and draws a project, and writes of it the file that is wished for. */
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { designFile } from "../../design.ts";
import { drawingPapers } from "../../output/drawings/drawing-sheets.ts";
import { exchangeFile } from "../../output/exchange-files.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import type { ExchangeReply, ExchangeRequest } from "./exchange.ts";

function made({ name, document, reader, wish }: ExchangeRequest): ExchangeReply {
  const read = designFile({ name, document });
  if (read.kind === "refused") return undefined;
  const { design, readFindings } = read;
  const { project, facade } = design;
  const { plan, findings } = cutFacade(project, facade);
  const takeoff = takeOff(project, facade, plan);
  const all = [...readFindings, ...design.findings, ...findings];
  const needsSheets = wish.kind === "sheet" || wish.kind === "drawings";
  const papers = needsSheets ? drawingPapers({ design, findings: all, reader, plan, takeoff }) : [];
  const file = exchangeFile(wish, {
    design,
    findings: all,
    cutFindings: findings,
    plan,
    takeoff,
    papers,
    reader,
  });
  return file && { name: file.name, bytes: new Uint8Array(file.bytes) };
}

self.addEventListener("message", ({ data }: MessageEvent<ExchangeRequest>) => {
  let reply: ExchangeReply;
  try {
    reply = made(data);
  } catch {
    reply = undefined;
  }
  self.postMessage(reply);
});
