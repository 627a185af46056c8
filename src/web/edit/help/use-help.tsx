/** The help beside a field: a quiet button by its label, and the note that it opens under it. */
import { lazy, type ReactNode, Suspense, useEffect, useId, useRef, useState } from "react";
import { useWords } from "../../words.ts";
import type { Field } from "./fields.ts";

const HelpNote = lazy(() => import("./HelpNote.tsx"));

/** Closes the note that is open: there is one at a time on the whole sheet. */
let closeOpen: (() => void) | undefined;

export interface Help {
  readonly button: ReactNode;
  readonly note: ReactNode;
}

export function useHelp(field: Field, label: string): Help {
  const { w } = useWords();
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const [open, setOpen] = useState(false);
  useEffect(() => {
    if (!open) return;
    closeOpen?.();
    const close = (): void => setOpen(false);
    closeOpen = close;
    // Before anything else that Escape lets go of.
    const press = (event: KeyboardEvent): void => {
      if (event.key !== "Escape") return;
      event.stopPropagation();
      close();
      button.current?.focus();
    };
    window.addEventListener("keydown", press, { capture: true });
    return () => {
      window.removeEventListener("keydown", press, { capture: true });
      if (closeOpen === close) closeOpen = undefined;
    };
  }, [open]);
  return {
    button: (
      <button
        ref={button}
        type="button"
        className="help-press"
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
      >
        <span aria-hidden="true">?</span>
        <span className="unseen">{w("page.edit.about", { field: label })}</span>
      </button>
    ),
    note: open && (
      <span id={id} className="help-note" role="note" aria-live="polite">
        <Suspense>
          <HelpNote field={field} />
        </Suspense>
      </span>
    ),
  };
}
