/** Searches on for cheaper cuts beside the page, until it is stopped from there. */
import { searchOn } from "../../cutting/facade/search-on.ts";
import type { SearchOnReply, SearchOnRequest } from "./search-on.ts";

function send(reply: SearchOnReply): void {
  self.postMessage(reply);
}

self.addEventListener("message", ({ data: { project, facade } }: MessageEvent<SearchOnRequest>) => {
  try {
    for (const tried of searchOn(project, facade)) send({ kind: "tried", tried });
    send({ kind: "ended", broken: false });
  } catch {
    send({ kind: "ended", broken: true });
  }
});
