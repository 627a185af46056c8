/** What the site pages stand on: the design, the journal with what still waits, and the way to tell something. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Entry } from "../../site/journal/entry.ts";
import { foldJournal, type SiteState } from "../../site/journal/fold.ts";
import { createDesigner, type Designer } from "../work/designer.ts";
import { freshDesign, type HeldDesign, heldDesign } from "./held.ts";
import { fetchJournal, lineTo } from "./queue/journal-api.ts";
import { keepSending, type Sending } from "./queue/keep-sending.ts";
import { type KnownEntry, keepJournal, keptQueue, knownJournal, tell } from "./queue/kept-queue.ts";
import type { Telling, Waiting, Whys } from "./queue/model.ts";
import { type Rest, sendWaiting } from "./queue/send-waiting.ts";

export interface Site {
  /** Undefined while it is looked for, or where there is none. */
  readonly held: HeldDesign | undefined;
  readonly isLooking: boolean;
  readonly state: SiteState;
  /** Of the journal and of the queue, refused ones left out. */
  readonly entries: readonly Entry[];
  readonly waiting: readonly Waiting[];
  readonly rest: Rest | undefined;
  /** The browser keeps nothing: what is told would be lost. */
  readonly isForgetful: boolean;
  /** False where it could not be kept. */
  tell(telling: Telling, replaces?: Waiting): Promise<boolean>;
  sendNow(): void;
}

/** @param language refusals are told in it, by the server and by `whys` */
export function useSite(language: string, whys: Whys): Site {
  const [held, setHeld] = useState<HeldDesign>();
  const [isLooking, setLooking] = useState(true);
  const [known, setKnown] = useState<readonly KnownEntry[]>([]);
  const [waiting, setWaiting] = useState<readonly Waiting[]>([]);
  const [rest, setRest] = useState<Rest>();
  const [isForgetful, setForgetful] = useState(false);
  const sending = useRef<Sending>(undefined);
  const project = held?.project;

  const look = useCallback(async (): Promise<void> => {
    try {
      setWaiting(await keptQueue.waiting());
      if (project !== undefined) setKnown((await knownJournal(project)).entries);
      setForgetful(false);
    } catch {
      setForgetful(true);
    }
  }, [project]);

  useEffect(() => {
    let isLeft = false;
    const show = (found: HeldDesign | undefined): void => {
      if (found && !isLeft) setHeld(found);
    };
    void heldDesign().then(async (found) => {
      show(found);
      show(await freshDesign(theDesigner));
      if (!isLeft) setLooking(false);
    });
    return () => {
      isLeft = true;
    };
  }, []);

  useEffect(() => {
    void look();
    if (project === undefined) return;
    const line = lineTo(language);
    const round = async (): Promise<Rest> => {
      try {
        const came = await sendWaiting(keptQueue, line, { whys, onStep: () => void look() });
        return came === "empty" ? await news(project) : came;
      } catch {
        return "away";
      }
    };
    const going = keepSending(round, (at) => {
      setRest(at);
      void look();
    });
    sending.current = going;
    return () => going.leave();
  }, [project, look, language, whys]);

  const tellIt = useCallback(
    async (telling: Telling, replaces?: Waiting): Promise<boolean> => {
      if (project === undefined) return false;
      try {
        const done = await tell(project, telling, replaces);
        await look();
        sending.current?.now();
        return done;
      } catch {
        setForgetful(true);
        return false;
      }
    },
    [project, look],
  );

  const entries = useMemo<readonly Entry[]>(() => {
    const open = waiting.filter((one) => one.project === project && one.refused === undefined);
    return [...known, ...open].map(({ entry }) => entry);
  }, [known, waiting, project]);
  const state = useMemo(() => foldJournal(entries), [entries]);
  const sendNow = useCallback(() => sending.current?.now(), []);
  return { held, isLooking, state, entries, waiting, rest, isForgetful, tell: tellIt, sendNow };
}

let designer: Designer | undefined;

/** Its worker is loaded only where an edited project has to be set out. */
function theDesigner(): Designer {
  designer ??= createDesigner();
  return designer;
}

/** Fetches what others told, page by page. */
async function news(project: string): Promise<Rest> {
  for (;;) {
    const { whole } = await knownJournal(project);
    const answer = await fetchJournal(project, whole);
    if (answer.kind !== "done") return answer.kind === "refused" ? "away" : answer.kind;
    const { entries, latest } = answer.done;
    const last = entries.at(-1)?.number ?? whole;
    if (entries.length > 0) await keepJournal(project, entries, last);
    if (entries.length === 0 || last >= latest) return "empty";
  }
}
