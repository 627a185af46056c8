import { useEffect, useRef } from "react";
import type { Offered } from "../sheet/use-offered.ts";
import { useWords } from "../words.ts";
import { ChangeList } from "./ChangeList.tsx";
import "./texts.ts";

/** A file of the project on the sheet: what it would change, and the ways to go on. */
export function OfferedDialog({ offered }: { offered: Offered }) {
  const { w } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  const { file, title, changes, take, open, leave } = offered;
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className="kept" aria-labelledby="offered-title" onClose={leave}>
      <div className="kept-head">
        <h2 id="offered-title">{w("page.kept.offered-title", { file, title })}</h2>
        <button type="button" className="kept-act" onClick={leave}>
          {w("page.kept.offered-leave")}
        </button>
      </div>
      <p>{w("page.kept.offered-about", { count: changes.length })}</p>
      <ChangeList changes={changes} />
      <p className="kept-ways">
        <button type="button" className="kept-act" onClick={take}>
          {w("page.kept.offered-take")}
        </button>
        <button type="button" className="kept-act" onClick={open}>
          {w("page.kept.offered-open")}
        </button>
      </p>
    </dialog>
  );
}
