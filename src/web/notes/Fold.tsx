import { type ReactNode, useId, useState } from "react";

/** A line that unfolds what stands behind it; it stays as it is from pick to pick. */
export function Fold({ title, sum, children }: { title: string; sum: string; children: ReactNode }) {
  const [open, setOpen] = useState(false);
  const list = useId();
  return (
    <div className="take-off">
      <button
        type="button"
        className="take-off-fold"
        aria-expanded={open}
        aria-controls={list}
        onClick={() => setOpen(!open)}
      >
        <b>{title}</b> <span className="sub">{sum}</span>
      </button>
      <div id={list} hidden={!open}>
        {children}
      </div>
    </div>
  );
}
