/** What the site has told of the project on the sheet: asked for while something shows it, and again with every news of it. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Entry } from "../../site/journal/entry.ts";
import type { SiteState } from "../../site/journal/fold.ts";
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

/** After a project came onto the sheet, milliseconds: its own drawing goes first. */
const REST = 1000;

/** The journal as it was opened, before anything that came later. */
interface Opened {
  readonly opening: Opening;
  readonly told: readonly Told[];
}

/** Undefined where the server cannot be asked; `nothing` where it has no database, and would be asked for news again and again. */
async function openJournal(project: string): Promise<Opened | "nothing" | undefined> {
  const kept = await fetchKept();
  if (!kept?.store) return kept ? "nothing" : undefined;
  const [opening, last] = await Promise.all([
    fetchJson<Opening>(`/api/projects/${project}/site/opening`),
    fetchJson<Page>(`/api/projects/${project}/journal?limit=${SHOWN}`),
  ]);
  if (!opening || !last) return undefined;
  return { opening, told: last.entries.filter(({ number }) => number <= opening.latest) };
}

/**
 * A long journal is asked for while the page rests, so that it is there when it is wanted; its news only while it is shown.
 * @returns undefined until it was asked
 */
export function useSiteNews(project: string | undefined, wanted: boolean): SiteNews | undefined {
  const [news, setNews] = useState<SiteNews>();
  const opened = useRef<{ readonly project: string; readonly journal: ReturnType<typeof openJournal> }>(
    undefined,
  );
  const open = useCallback((of: string): ReturnType<typeof openJournal> => {
    if (opened.current?.project !== of) opened.current = { project: of, journal: openJournal(of) };
    return opened.current.journal;
  }, []);

  useEffect(() => {
    if (!project) return;
    const rest = setTimeout(() => void open(project), REST);
    return () => clearTimeout(rest);
  }, [project, open]);

  useEffect(() => {
    if (!wanted || !project) return;
    let isLeft = false;
    let live: EventSource | undefined;
    const begin = async (): Promise<void> => {
      const [found, { createFold, foldJournal }, { foldOf }] = await Promise.all([
        open(project),
        import("../../site/journal/fold.ts"),
        import("../../site/journal/opening.ts"),
      ]);
      if (isLeft) return;
      if (found === undefined || found === "nothing") {
        opened.current = undefined;
        setNews({ told: [], state: foldJournal([]), isAway: true });
        return;
      }
      // A page of another version than the server reads all entries.
      const begun = foldOf(found.opening);
      const fold = begun ?? createFold();
      let told = begun ? found.told : [];
      let latest = begun ? found.opening.latest : 0;
      if (begun) setNews({ told, state: fold.state(), isAway: false });
      let wasAway = false;
      const ask = async (): Promise<void> => {
        let isAway = false;
        let isNew = !begun;
        for (let more = true; more; ) {
          const page = await fetchJson<Page>(
            `/api/projects/${project}/journal?after=${latest}&limit=${PAGE}`,
          );
          if (isLeft) return;
          isAway = page === undefined;
          const entries = page?.entries ?? [];
          fold.add(entries.map(({ entry }) => entry));
          told = [...told, ...entries].slice(-SHOWN);
          latest = entries.at(-1)?.number ?? latest;
          isNew ||= entries.length > 0;
          more = entries.length > 0 && latest < (page?.latest ?? 0);
        }
        if (isNew || isAway !== wasAway) setNews({ told, state: fold.state(), isAway });
        wasAway = isAway;
      };
      let asking = Promise.resolve();
      const next = (): void => {
        asking = asking.then(ask);
      };
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
  }, [project, wanted, open]);
  return news;
}
