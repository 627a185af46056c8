/** Older states on the sheet: looked at by their address or by their place among the steps, left, and made current. */
import { type RefObject, useCallback, useEffect, useMemo, useRef } from "react";
import { message } from "../../text/message.ts";
import { present } from "../edit/history.ts";
import type { Designer } from "../work/designer.ts";
import type { Edited } from "../work/keeper.ts";
import {
  fetchOlder,
  leaveAddress,
  type Older,
  olderName,
  type Restored,
  restoreRevision,
  revisionAt,
} from "./older.ts";
import type { Refused } from "./refused.ts";
import { asRead, type Coming, type Sheeted } from "./sheeted.ts";

/** The sheet, as this puts older states on it. */
export interface OlderSheet {
  readonly designer: Designer;
  readonly held: RefObject<Sheeted | undefined>;
  put(next: Sheeted): void;
  /** Puts a document on the sheet as a step of its own. */
  add(step: Edited): void;
  openKept(id: string): Promise<void>;
  /** Shows the served project. */
  showFirst(): Promise<void>;
  /** Begins to bring something: its turn, and whether it still is, which ends the sheet's being busy. */
  begin(): { readonly turn: number; readonly isStill: () => boolean };
  /** What was edited is sent, and nothing more is kept. */
  leaveKeeper(): void;
  refuse(refused: Refused | undefined): void;
}

export interface OlderWays {
  /** Shows a step of this page as it was, counted from 0, with nothing of it to be edited. */
  lookAt(step: number): void;
  /** From an older state back to the latest. */
  comeBack(): void;
  /** Makes the older state that is looked at the current one, as a new revision or step. */
  restore(): Promise<Restored>;
}

export function useOlder(sheet: OlderSheet): OlderWays {
  const { designer, held, put, add, openKept, showFirst, begin, leaveKeeper, refuse } = sheet;
  /** What stood on the sheet before a step of it was looked at. */
  const leftFor = useRef<Sheeted>(undefined);

  const putOlder = useCallback(
    (coming: Coming, { older, load }: { readonly older: Older; readonly load: number }) => {
      const read = asRead(coming, { load, keptAs: coming.keptAs ?? "" });
      refuse(undefined);
      if (read) put({ ...read, older });
      else if (coming.kind === "refused") {
        refuse({ kind: "refused", name: coming.name, findings: coming.findings });
      } else refuse({ kind: "broken", name: coming.name });
    },
    [put, refuse],
  );

  /** What the address names: a revision to be looked at, or the project that is served. */
  const follow = useCallback(async () => {
    const at = revisionAt(location.hash);
    const now = held.current;
    if (!at) {
      if (now?.older?.from === "server") await openKept(now.keptAs);
      else if (!now) await showFirst();
      return;
    }
    const { turn, isStill } = begin();
    const found = await fetchOlder(at, designer);
    if (!isStill()) return;
    if (found.kind === "older") {
      leaveKeeper();
      putOlder(found.coming, { older: found.older, load: turn });
    } else if (found.kind === "latest") await openKept(at.id);
    else {
      leaveAddress();
      if (!held.current) await showFirst();
      refuse({ kind: "gone" });
    }
  }, [designer, held, openKept, showFirst, begin, leaveKeeper, putOlder, refuse]);

  useEffect(() => {
    const hear = (): void => void follow();
    hear();
    window.addEventListener("hashchange", hear);
    return () => window.removeEventListener("hashchange", hear);
  }, [follow]);

  const lookAt = useCallback(
    (nth: number) => {
      const now = held.current;
      const step = now?.history.steps[nth];
      if (!now || now.older || !step) return;
      const { says, document } = step;
      const number = nth + 1;
      void designer.design({ name: olderName(now.name, number), document }).then((answer) => {
        if (held.current?.load !== now.load) return;
        leftFor.current = held.current;
        // Between two files: the one that is left stands there still, and goes on being kept.
        const load = now.load + 0.5;
        putOlder({ ...answer, keptAs: now.keptAs }, { older: { from: "page", number, says, who: "" }, load });
      });
    },
    [designer, held, putOlder],
  );

  const comeBack = useCallback(() => {
    const older = held.current?.older;
    if (older?.from === "page" && leftFor.current) {
      refuse(undefined);
      put(leftFor.current);
      leftFor.current = undefined;
    } else if (older) location.hash = "";
  }, [held, put, refuse]);

  const restore = useCallback(async (): Promise<Restored> => {
    const now = held.current;
    if (!now?.older) return { kind: "failed", says: undefined };
    const { from, number, says } = now.older;
    const done: Restored =
      from === "server" ? await restoreRevision({ id: now.keptAs, number }) : { kind: "restored" };
    if (done.kind === "restored") comeBack();
    if (from === "page") {
      const { document } = present(now.history);
      add({ document, says: message("page.edit.back-to", { number: String(number), says }) });
    }
    return done;
  }, [held, add, comeBack]);

  return useMemo(() => ({ lookAt, comeBack, restore }), [lookAt, comeBack, restore]);
}
