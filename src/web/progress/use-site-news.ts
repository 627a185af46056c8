/** What the site has told of the project on the sheet: asked for while something shows it, and again with every news of it. */
import { useEffect, useState } from "react";
import type { Entry } from "../../site/journal/entry.ts";
import type { Fold, SiteState } from "../../site/journal/fold.ts";
import type { Opening } from "../../site/journal/opening.ts";
import { fetchJson } from "../work/api.ts";
import { fetchKept } from "../work/kept-api.ts";

export interface Told {
  readonly number: number;
  readonly who: string;
  readonly time: string;
  readonly entry: Entry;
}

export interface SiteNews {
  /** The latest entries, as many as are shown, the last at the end. */
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

/** Entries that are shown one by one; the rest is the journal's. */
const SHOWN = 30;

/** @returns undefined until it was asked */
export function useSiteNews(project: string | undefined, wanted: boolean): SiteNews | undefined {
  const [news, setNews] = useState<SiteNews>();
  useEffect(() => {
    if (!wanted || !project) return;
    let isLeft = false;
    let told: readonly Told[] = [];
    let latest = 0;
    let fold: Fold | undefined;
    let asking = Promise.resolve();
    /** What it came to is taken as the server reckoned it; a page of another version reads all entries. */
    const open = async (): Promise<Fold | undefined> => {
      const [opening, last, { createFold }, { foldOf }] = await Promise.all([
        fetchJson<Opening>(`/api/projects/${project}/site/opening`),
        fetchJson<Page>(`/api/projects/${project}/journal?limit=${SHOWN}`),
        import("../../site/journal/fold.ts"),
        import("../../site/journal/opening.ts"),
      ]);
      if (!opening || !last) return undefined;
      const begun = foldOf(opening);
      if (begun) {
        latest = opening.latest;
        told = last.entries.filter(({ number }) => number <= latest);
      }
      return begun ?? createFold();
    };
    const ask = async (): Promise<void> => {
      fold ??= await open();
      let isAway = fold === undefined;
      for (let more = true; more && fold; ) {
        const page = await fetchJson<Page>(`/api/projects/${project}/journal?after=${latest}&limit=${PAGE}`);
        if (isLeft) return;
        isAway = page === undefined;
        const entries = page?.entries ?? [];
        fold.add(entries.map(({ entry }) => entry));
        told = [...told, ...entries].slice(-SHOWN);
        latest = entries.at(-1)?.number ?? latest;
        more = entries.length > 0 && latest < (page?.latest ?? 0);
      }
      if (isLeft) return;
      const { foldJournal } = await import("../../site/journal/fold.ts");
      setNews({ told, state: fold?.state() ?? foldJournal([]), isAway });
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
