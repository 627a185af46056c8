/** The project on the sheet: the served one first, then whatever is opened from disk; edited, and designed by the worker. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Laid } from "../../design.ts";
import type { PatchOperation } from "../../findings/finding.ts";
import { applyPatch } from "../../project/edit.ts";
import type { Versions } from "../../project/merge.ts";
import { printProject } from "../../project/print.ts";
import { type Message, message } from "../../text/message.ts";
import { besides, done, type History, moved, present, type Step } from "../edit/history.ts";
import type { Designer } from "../work/designer.ts";
import { idOf } from "../work/hash.ts";
import { type Edited, type Keeper, type KeptState, openKeeper, type Way } from "../work/keeper.ts";
import { fetchProject, fetchRevision } from "../work/kept-api.ts";
import { edited } from "./edited.ts";
import { leaveAddress, revisionAt } from "./older.ts";
import type { Refused } from "./refused.ts";
import { asRead, type Coming, type Sheeted } from "./sheeted.ts";
import { type OlderWays, useOlder } from "./use-older.ts";

export interface Edit {
  readonly operations: readonly PatchOperation[];
  readonly says: Message;
  /** Edits with one key in a row are one step to take back. */
  readonly merge?: string;
  /** The document that it was made to, where more than its own place hangs on it: what has come since is kept. */
  readonly made?: unknown;
}

export interface ProjectState extends OlderWays {
  readonly sheeted?: Sheeted;
  readonly refused?: Refused;
  readonly busy: boolean;
  /** What taking a step back, or doing it again, would undo or redo. */
  readonly back: Message | undefined;
  readonly forth: Message | undefined;
  /** The project differs from the file that it was read from or last saved to. */
  readonly unsaved: boolean;
  /** Where the edits are kept. */
  readonly kept: KeptState;
  open(file: File): void;
  /** Puts a project of the server's on the sheet. */
  openKept(id: string): Promise<void>;
  /** Goes back to a revision of the project on the sheet, by a step of its own. */
  backTo(number: number): void;
  /** After another window went on: puts these edits on top of its, or goes on with its, `both` with these as a variant. */
  settle(way: Way): void;
  /** After another window went on: these edits, its, and what both were made from. */
  versions(): Promise<Versions | undefined>;
  /** Goes on with what both became together. */
  merge(merged: Edited): Promise<"kept" | "failed" | "refused" | "conflict">;
  putAway(): void;
  edit(edit: Edit): void;
  undo(): void;
  redo(): void;
  /** The project file's text, for the reader to save; what is handed out counts as saved. */
  save(): string | undefined;
  /** Sets imagined edits out while the page rests, and has them drawn unseen, until what is given back is called. */
  practise(
    imagine: (nth: number) => readonly PatchOperation[] | undefined,
    draw?: (laid: Laid) => void,
  ): () => void;
}

export interface ProjectSources {
  readonly designer: Designer;
  /** The served project, already on its way; undefined where there is none. */
  readonly first: Promise<Coming | undefined>;
  /** The same where it is here already: it is on the sheet from the first drawing on. */
  readonly served: Coming | undefined;
}

/** What the designer is asked for, and what its answer does to the history. */
interface Asked {
  readonly document: unknown;
  /** One of a row of edits, as a hand or keys make them: what the row is called, and the document that its edits are each made to. */
  readonly row?: { readonly name: string; readonly onto: unknown };
  readonly after: (history: History) => History;
}

export function useProject({ designer, first, served }: ProjectSources): ProjectState {
  const [sheeted, setSheeted] = useState(() =>
    revisionAt(location.hash) ? undefined : asRead(served, { load: 1, keptAs: served?.keptAs ?? "" }),
  );
  const [refused, setRefused] = useState<Refused>();
  const [busy, setBusy] = useState(true);
  const [saved, setSaved] = useState<unknown>();
  const latest = useRef(0);
  const held = useRef<Sheeted>(undefined);
  const [kept, setKept] = useState<KeptState>({ kind: "nothing" });
  const keeper = useRef<Keeper>(undefined);
  const running = useRef<Asked>(undefined);
  const waiting = useRef<Asked>(undefined);

  const put = useCallback((next: Sheeted) => {
    held.current = next;
    setSheeted(next);
  }, []);

  /**
   * One question at a time, until its facade is there; of those that wait the latest alone is asked, since it holds what
   * came before it.
   */
  const ask = useCallback(
    (asked: Asked) => {
      if (running.current) {
        waiting.current = asked;
        return;
      }
      const now = held.current;
      if (!now) return;
      running.current = asked;
      const { load, name } = now;
      const goOn = (): void => {
        if (running.current !== asked) return;
        running.current = undefined;
        const next = waiting.current;
        waiting.current = undefined;
        if (next) ask(next);
      };
      const onFacade = (facade: Laid): void => {
        const still = held.current;
        if (still?.load === load) {
          const design = { ...facade, findings: still.design.findings };
          put({ ...still, design, proving: true, history: asked.after(still.history) });
          setRefused(undefined);
        }
        goOn();
      };
      void designer
        .pass({ name, document: asked.document }, onFacade, asked.row !== undefined)
        .then((answer) => {
          const still = held.current;
          if (still?.load === load) {
            if (answer.kind === "designed") {
              const { design, readFindings } = answer;
              put({ ...still, design, findings: [...readFindings, ...design.findings], proving: false });
            } else if (answer.kind === "overtaken") {
              const { findings } = answer;
              if (findings) put({ ...still, design: { ...still.design, findings }, findings });
            } else if (answer.kind === "refused") {
              if (!waiting.current) setRefused({ kind: "edit", name, findings: answer.findings });
            } else if (answer.kind === "broken") setRefused({ kind: "broken", name });
          }
          goOn();
        });
    },
    [designer, put],
  );

  /** Puts a whole document on the sheet, as a step of its own. */
  const add = useCallback(
    (step: Edited) => ask({ document: step.document, after: (history) => done(history, step) }),
    [ask],
  );

  const leaveKeeper = useCallback(() => {
    keeper.current?.leave();
    keeper.current = undefined;
    waiting.current = undefined;
    setKept({ kind: "nothing" });
  }, []);

  const show = useCallback(
    async (coming: Promise<Coming | undefined>) => {
      latest.current += 1;
      const turn = latest.current;
      setBusy(true);
      const answer = await coming;
      // A file opened meanwhile has taken this one's place.
      if (turn !== latest.current) return;
      setBusy(false);
      if (answer?.kind === "designed") {
        leaveAddress();
        const { name, document, design, latest: revision } = answer;
        const keptAs = answer.keptAs ?? (await idOf(name, design.project.title));
        if (turn !== latest.current) return;
        leaveKeeper();
        setRefused(undefined);
        setSaved(document);
        const read = asRead(answer, { load: turn, keptAs });
        if (read) put(read);
        const opened = await openKeeper({
          id: keptAs,
          name,
          document,
          ...(revision ? { latest: revision } : {}),
          onState: (state) => turn === latest.current && setKept(state),
        });
        if (turn !== latest.current) {
          opened.leave();
          return;
        }
        keeper.current = opened;
        if (held.current && !held.current.older) opened.edited(present(held.current.history));
        const { newer } = opened;
        if (newer) add({ ...newer, says: message("page.edit.kept", { says: newer.says }) });
      } else if (answer?.kind === "refused") {
        setRefused({ kind: "refused", name: answer.name, findings: answer.findings });
      } else setRefused(answer ? { kind: "broken", name: answer.name } : { kind: "absent" });
    },
    [put, add, leaveKeeper],
  );

  const openKept = useCallback(
    (id: string) => {
      const coming = fetchProject(id).then(async (found) => {
        if (!found) return undefined;
        const { name, revision } = found;
        const answer = await designer.design({ name, document: revision.document });
        return { ...answer, keptAs: id, latest: revision };
      });
      return show(coming);
    },
    [designer, show],
  );

  const refuse = setRefused;
  const showFirst = useCallback(() => show(first), [show, first]);
  const begin = useCallback(() => {
    latest.current += 1;
    const turn = latest.current;
    setBusy(true);
    const isStill = (): boolean => {
      if (turn === latest.current) setBusy(false);
      return turn === latest.current;
    };
    return { turn, isStill };
  }, []);
  const older = useOlder({ designer, held, put, add, openKept, showFirst, begin, leaveKeeper, refuse });

  const open = useCallback(
    (file: File) => {
      const coming = file.text().then(
        (text) => designer.design({ name: file.name, text }),
        () => undefined,
      );
      void show(coming);
    },
    [designer, show],
  );

  const backTo = useCallback(
    (number: number) => {
      const now = held.current;
      if (!now) return;
      void fetchRevision(now.keptAs, number).then((found) => {
        if (!found || held.current?.load !== now.load) return;
        const says = message("page.edit.back-to", { number: String(number), says: found.says });
        add({ document: found.document, says });
      });
    },
    [add],
  );

  const settle = useCallback(
    (way: Way) => {
      const of = keeper.current;
      void of?.settle(way).then((step) => {
        if (step && keeper.current === of) add(step);
      });
    },
    [add],
  );

  const versions = useCallback(async () => keeper.current?.versions(), []);
  const merge = useCallback(
    async (merged: Edited) => {
      const of = keeper.current;
      const done = (await of?.merge(merged)) ?? "failed";
      if (done === "kept" && keeper.current === of) add(merged);
      return done;
    },
    [add],
  );

  const edit = useCallback(
    (edit: Edit) => {
      const { says, merge } = edit;
      const now = held.current;
      if (!now || edit.operations.length === 0) return;
      if (now.older) {
        setRefused({ kind: "older" });
        return;
      }
      const before = waiting.current ?? running.current;
      // Each place of a drag stands for itself: one that was refused must not hold up the next.
      const row = merge !== undefined && before?.row?.name === merge ? before.row : undefined;
      const onto = row ? row.onto : (before?.document ?? present(now.history).document);
      const made = edited(edit, onto);
      if (!made.ok) {
        setRefused({ kind: "edit", name: now.name, findings: made.findings });
        return;
      }
      const { document } = made;
      const step: Step = { document, says, ...(merge !== undefined && { merge }) };
      ask({
        document,
        ...(merge !== undefined && { row: { name: merge, onto } }),
        after: (history) => done(history, step),
      });
    },
    [ask],
  );

  const go = useCallback(
    (by: 1 | -1) => {
      const now = held.current;
      if (!now) return;
      // From where the page will be once what was asked before is done: two presses in a breath are two steps.
      const coming = [running.current, waiting.current].reduce(
        (history, asked) => asked?.after(history) ?? history,
        now.history,
      );
      const to = moved(coming, coming.at + by);
      if (to.at !== coming.at) ask({ document: present(to).document, after: () => to });
    },
    [ask],
  );

  const now = sheeted && present(sheeted.history);
  const isOlder = sheeted?.older !== undefined;
  const unsaved = now !== undefined && !isOlder && now.document !== saved;
  useEffect(() => {
    if (now && !isOlder) keeper.current?.edited(now);
  }, [now, isOlder]);

  const save = useCallback((): string | undefined => {
    const document = held.current && present(held.current.history).document;
    if (document === undefined) return undefined;
    if (!held.current?.older) setSaved(document);
    return printProject(document);
  }, []);
  const practise = useCallback<ProjectState["practise"]>(
    (imagine, draw) =>
      designer.practise((nth) => {
        const now = held.current;
        const operations = imagine(nth);
        if (!now || !operations) return undefined;
        const patched = applyPatch(present(now.history).document, operations);
        return patched.ok ? { name: now.name, document: patched.document } : undefined;
      }, draw),
    [designer],
  );
  const putAway = useCallback(() => setRefused(undefined), []);
  const undo = useCallback(() => go(-1), [go]);
  const redo = useCallback(() => go(1), [go]);
  const { back, forth } = sheeted ? besides(sheeted.history) : { back: undefined, forth: undefined };
  return useMemo(
    () => ({
      busy,
      back: back?.says,
      forth: forth?.says,
      unsaved,
      kept,
      open,
      openKept,
      backTo,
      ...older,
      settle,
      versions,
      merge,
      putAway,
      edit,
      undo,
      redo,
      save,
      practise,
      ...(sheeted ? { sheeted } : {}),
      ...(refused ? { refused } : {}),
    }),
    [
      busy,
      back,
      forth,
      unsaved,
      kept,
      open,
      openKept,
      backTo,
      older,
      settle,
      versions,
      merge,
      putAway,
      edit,
      undo,
      redo,
      save,
      practise,
      sheeted,
      refused,
    ],
  );
}
