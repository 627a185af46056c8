import { lazy, Suspense, useState } from "react";
import { useWords } from "../../words.ts";
import type { TakeDrawingProps } from "./props.ts";

const TakeDrawing = lazy(async () => ({ default: (await import("./TakeDrawing.tsx")).TakeDrawing }));

/** The way to a drawing from disk, loaded when it is pressed. */
export function DrawingFold(props: TakeDrawingProps) {
  const { w } = useWords();
  const [open, setOpen] = useState(false);
  return (
    <>
      <p className="edit-words">
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {w(props.into ? "page.intake.face" : "page.intake.start")}
        </button>
      </p>
      <Suspense>{open && <TakeDrawing {...props} />}</Suspense>
    </>
  );
}
