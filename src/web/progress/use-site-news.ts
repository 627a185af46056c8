/** What the site has told of the project on the sheet: asked for while something shows it, and again with every news of it. */
import { useCallback, useEffect, useRef, useState } from "react";
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

/** After a project came onto the sheet, milliseconds: its own drawing goes first. */
const REST = 1000;

/** A journal as far as it was read. */
interface Opened {
  readonly fold: Fold;
  told: readonly Told[];
  /** Number up to which it is folded. */
  latest: number;
  /** Undefined where a page of another version than the server has all entries to read. */
  state: SiteState | undefined;
}

/** Undefined where the server cannot be asked; `nothing` where it has no database, and would be asked for news again and again. */
async function openJournal(project: string): Promise<Opened | "nothing" | undefined> {
  const kept = await fetchKept();
  if (!kept?.store) return kept ? "nothing" : undefined;
  const [opening, last, { createFold }, { foldOf }] = await Promise.all([
    fetchJson<Opening>(`/api/projects/${project}/site/opening`),
    fetchJson<Page>(`/api/projects/${project}/journal?limit=${SHOWN}`),
    import("../../site/journal/fold.ts"),
    import("../../site/journal/opening.ts"),
  ]);
  if (!opening || !last) return undefined;
  const fold = foldOf(opening);
  if (!fold) return { fold: createFold(), told: [], latest: 0, state: undefined };
  const told = last.entries.filter(({ number }) => number <= opening.latest);
  return { fold, told, latest: opening.latest, state: fold.state() };
}

/**
 * A long journal is asked for and reckoned while the page rests, so that it is there when it is wanted; its news only while it is shown.
 * @param beside called as the page rests: loads what will show it
 * @returns undefined until it was asked
 */
export function useSiteNews(
  project: string | undefined,
  wanted: boolean,
  beside: () => void,
): SiteNews | undefined {
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
    const rest = setTimeout(() => {
      void open(project);
      beside();
    }, REST);
    return () => clearTimeout(rest);
  }, [project, open, beside]);

  useEffect(() => {
    if (!wanted || !project) return;
    let isLeft = false;
    let live: EventSource | undefined;
    const begin = async (): Promise<void> => {
      const [found, { foldJournal }] = await Promise.all([
        open(project),
        import("../../site/journal/fold.ts"),
      ]);
      if (isLeft) return;
      if (found === undefined || found === "nothing") {
        opened.current = undefined;
        setNews({ told: [], state: foldJournal([]), isAway: true });
        return;
      }
      const show = (isAway: boolean): void => {
        found.state ??= found.fold.state();
        setNews({ told: found.told, state: found.state, isAway });
      };
      let isNew = found.state === undefined;
      if (!isNew) show(false);
      let wasAway = false;
      const ask = async (): Promise<void> => {
        let isAway = false;
        for (let more = true; more; ) {
          const page = await fetchJson<Page>(
            `/api/projects/${project}/journal?after=${found.latest}&limit=${PAGE}`,
          );
          if (isLeft) return;
          isAway = page === undefined;
          const entries = page?.entries ?? [];
          if (entries.length > 0) {
            found.fold.add(entries.map(({ entry }) => entry));
            found.told = [...found.told, ...entries].slice(-SHOWN);
            found.latest = entries.at(-1)?.number ?? found.latest;
            found.state = undefined;
            isNew = true;
          }
          more = entries.length > 0 && found.latest < (page?.latest ?? 0);
        }
        if (isNew || isAway !== wasAway) show(isAway);
        isNew = false;
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
