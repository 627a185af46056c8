/** Searches the build-ups that bring neighbouring zones into one plane, beside the page. */
import { demandsOf } from "../../codes/demands.ts";
import { searchPlanes } from "../../setout/plane-search/index.ts";
import type { PlanesReply, PlanesRequest } from "./planes.ts";

self.addEventListener("message", ({ data: { project, zones } }: MessageEvent<PlanesRequest>) => {
  let reply: PlanesReply;
  try {
    reply = searchPlanes({ project, demands: demandsOf(project), zones, show: { passing: 12, failing: 12 } });
  } catch {
    reply = undefined;
  }
  self.postMessage(reply);
});
