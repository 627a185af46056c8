/** Cuts a project's facade and takes it off beside the page: it takes longer than a frame. */
import { cutFacade } from "../../cutting/facade/cut-facade.ts";
import { designFile } from "../../design.ts";
import { createFaceMemo } from "../../setout/memo.ts";
import { takeOff } from "../../takeoff/take-off.ts";
import type { CutReply, CutRequest } from "./cutter.ts";

const faces = createFaceMemo({ faces: 200, shareds: 2 });

self.addEventListener("message", ({ data: { name, document } }: MessageEvent<CutRequest>) => {
  const reply = (): CutReply => {
    try {
      const made = designFile({ name, document }, { faces });
      if (made.kind === "refused") return undefined;
      const { project, facade } = made.design;
      const { plan, findings } = cutFacade(project, facade);
      return { plan, findings, takeoff: takeOff(project, facade, plan) };
    } catch {
      return undefined;
    }
  };
  self.postMessage(reply());
});
