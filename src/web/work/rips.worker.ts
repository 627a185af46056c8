/** Weighs widths to rip the pile to beside the page: it takes some seconds. */
import { ripChoices, USUAL_RIPS } from "../../cutting/facade/rip-choice.ts";
import type { RipsReply, RipsRequest } from "./rips.ts";

self.addEventListener("message", ({ data: { project, ...laid } }: MessageEvent<RipsRequest>) => {
  let reply: RipsReply;
  try {
    reply = ripChoices(project, laid, USUAL_RIPS);
  } catch {
    reply = undefined;
  }
  self.postMessage(reply);
});
