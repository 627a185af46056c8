/** What the site has told of the project on the sheet: asked for while something shows it, and again with every news of it. */
import { useEffect, useState } from "react";
import type { Entry } from "../../site/journal/entry.ts";
import type { SiteState } from "../../site/journal/fold.ts";
import { fetchJson } from "../work/api.ts";
import { fetchKept } from "../work/kept-api.ts";

export interface Told {
  readonly number: number;
  readonly who: string;
  readonly time: string;
  readonly entry: Entry;
}

export interface SiteNews {
  readonly told: readonly Told[];
  /** What it comes to. */
  readonly state: SiteState;
  /** No server can be asked, or it keeps nothing. */
  readonly isAway: boolean;
}

interface Page {
  readonly entries: readonly Told[];
  readonly latest: number;
}

const PAGE = 1000;

/** @returns undefined until it was asked */
export function useSiteNews(project: string | undefined, wanted: boolean): SiteNews | undefined {
  const [news, setNews] = useState<SiteNews>();
  useEffect(() => {
    if (!wanted || !project) return;
    let isLeft = false;
    let known: readonly Told[] = [];
    let asking = Promise.resolve();
    const ask = async (): Promise<void> => {
      const { foldJournal } = await import("../../site/journal/fold.ts");
      let isAway = false;
      for (let latest = Number.POSITIVE_INFINITY; (known.at(-1)?.number ?? 0) < latest && !isAway; ) {
        const after = known.at(-1)?.number ?? 0;
        const page = await fetchJson<Page>(`/api/projects/${project}/journal?after=${after}&limit=${PAGE}`);
        if (isLeft) return;
        isAway = page === undefined;
        latest = page?.latest ?? latest;
        known = [...known, ...(page?.entries ?? [])];
      }
      setNews({ told: known, state: foldJournal(known.map(({ entry }) => entry)), isAway });
    };
    const next = (): void => {
      asking = asking.then(ask);
    };
    let live: EventSource | undefined;
    // A server without a database has no journal, and would be asked for news again and again.
    const begin = async (): Promise<void> => {
      const [kept, { foldJournal }] = await Promise.all([fetchKept(), import("../../site/journal/fold.ts")]);
      if (isLeft) return;
      if (!kept?.store) {
        setNews({ told: [], state: foldJournal([]), isAway: true });
        return;
      }
      next();
      live = new EventSource(`/api/projects/${project}/live`);
      live.addEventListener("journal", next);
    };
    setNews(undefined);
    void begin();
    return () => {
      isLeft = true;
      live?.close();
    };
  }, [project, wanted]);
  return news;
}
