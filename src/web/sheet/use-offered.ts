import { useCallback, useMemo, useRef, useState } from "react";
import { message } from "../../text/message.ts";
import { present } from "../edit/history.ts";
import type { OtherState } from "../kept/state-in.ts";
import type { ProjectState } from "./use-project.ts";

/** A file that holds the project on the sheet in another state, before anything is done with it. */
export interface Offered extends OtherState {
  readonly file: string;
  readonly title: string;
  /** Makes its changes, as one step that can be taken back. */
  take(): void;
  /** Puts it on the sheet by itself, as any other file. */
  open(): void;
  leave(): void;
}

/** The project, with a file of the same one not opened over it before what it would change was seen. */
export function useOffered(project: ProjectState): {
  readonly project: ProjectState;
  readonly offered: Offered | undefined;
} {
  const [offered, setOffered] = useState<Offered>();
  const latest = useRef(project.sheeted);
  latest.current = project.sheeted;
  const { open: put, edit } = project;
  const open = useCallback(
    async (file: File): Promise<void> => {
      const now = latest.current;
      const { name } = file;
      const title = now?.design.project.title ?? "";
      // What is only looked at is not edited: the file is opened by itself.
      const other =
        now && !now.older && (await otherState(file, { title, document: present(now.history).document }));
      // Another project may have taken the sheet while the file was read.
      if (!other || latest.current?.load !== now.load) {
        put(file);
        return;
      }
      const leave = (): void => setOffered(undefined);
      setOffered({
        ...other,
        file: name,
        title,
        leave,
        open: () => {
          leave();
          put(file);
        },
        take: () => {
          leave();
          const operations = [{ op: "replace" as const, path: "", value: other.document }];
          edit({ operations, says: message("page.edit.offered", { file: name }) });
        },
      });
    },
    [put, edit],
  );
  const offering = useMemo(() => ({ ...project, open: (file: File) => void open(file) }), [project, open]);
  return { project: offering, offered };
}

/** Undefined where the file cannot be had either: opening it tells so. */
async function otherState(
  file: File,
  on: { readonly title: string; readonly document: unknown },
): Promise<OtherState | undefined> {
  try {
    const [text, { stateIn }] = await Promise.all([file.text(), import("../kept/state-in.ts")]);
    return stateIn(text, file.name, on);
  } catch {
    return undefined;
  }
}
