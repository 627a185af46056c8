/** What the site pages stand on: the design, the journal with what still waits, and the way to tell something. */
import { useCallback, useEffect, useRef, useState } from "react";
import { foldJournal, type SiteState } from "../../site/journal/fold.ts";
import { createDesigner, type Designer } from "../work/designer.ts";
import { freshDesign, type HeldDesign } from "./held.ts";
import { lineTo } from "./queue/journal-api.ts";
import { keepSending, type Sending } from "./queue/keep-sending.ts";
import { keptQueue, tell } from "./queue/kept-queue.ts";
import { knownSite } from "./queue/known-site.ts";
import type { Telling, Waiting, Whys } from "./queue/model.ts";
import { type Rest, sendWaiting } from "./queue/send-waiting.ts";

export interface Site {
  /** Undefined while it is looked for, or where there is none. */
  readonly held: HeldDesign | undefined;
  readonly isLooking: boolean;
  /** Of the journal and of the queue, refused ones left out. */
  readonly state: SiteState;
  readonly waiting: readonly Waiting[];
  readonly rest: Rest | undefined;
  /** The browser keeps nothing: what is told would be lost. */
  readonly isForgetful: boolean;
  /** False where it could not be kept. */
  tell(telling: Telling, replaces?: Waiting): Promise<boolean>;
  sendNow(): void;
}

const NOTHING = foldJournal([]);

/**
 * @param first what was held at the last visit
 * @param language refusals are told in it, by the server and by `whys`
 */
export function useSite(first: Promise<HeldDesign | undefined>, language: string, whys: Whys): Site {
  const [held, setHeld] = useState<HeldDesign>();
  const [isLooking, setLooking] = useState(true);
  const [state, setState] = useState<SiteState>(NOTHING);
  const [waiting, setWaiting] = useState<readonly Waiting[]>([]);
  const [rest, setRest] = useState<Rest>();
  const [isForgetful, setForgetful] = useState(false);
  const sending = useRef<Sending>(undefined);
  const project = held?.project;

  const known = project === undefined ? undefined : knownSite(project);

  const look = useCallback(async (): Promise<void> => {
    try {
      const found = await known?.look();
      setWaiting(found?.waiting ?? (await keptQueue.waiting()));
      setState(found?.state ?? NOTHING);
      setForgetful(false);
    } catch {
      setForgetful(true);
    }
  }, [known]);

  useEffect(() => {
    let isLeft = false;
    const show = (found: HeldDesign | undefined): void => {
      if (found && !isLeft) setHeld(found);
    };
    void first.then(async (found) => {
      show(found);
      // What the phone holds is shown whole before the network is asked: reading a design anew takes longer than a glance.
      if (found)
        await knownSite(found.project)
          .look()
          .catch(() => undefined);
      show(await freshDesign(theDesigner));
      if (!isLeft) setLooking(false);
    });
    return () => {
      isLeft = true;
    };
  }, [first]);

  useEffect(() => {
    void look();
    if (known === undefined) return;
    const line = lineTo(language);
    const round = async (): Promise<Rest> => {
      try {
        const came = await sendWaiting(keptQueue, line, { whys, onStep: () => void look() });
        return came === "empty" ? await known.news() : came;
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
  }, [known, look, language, whys]);

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

  const sendNow = useCallback(() => sending.current?.now(), []);
  return { held, isLooking, state, waiting, rest, isForgetful, tell: tellIt, sendNow };
}

let designer: Designer | undefined;

/** Its worker is loaded only where an edited project has to be set out. */
function theDesigner(): Designer {
  designer ??= createDesigner();
  return designer;
}
