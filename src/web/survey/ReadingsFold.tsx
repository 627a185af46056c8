import { lazy, Suspense, useState } from "react";
import type { Source } from "../../project/editing/change.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";

const TakeReadings = lazy(async () => ({
  default: (await import("../edit/intake/TakeReadings.tsx")).TakeReadings,
}));

/** The way to a table of readings from disk, loaded when it is pressed. */
export function ReadingsFold(props: { source: Source; onEdit: (edit: Edit) => void }) {
  const { w } = useWords();
  const [open, setOpen] = useState(false);
  return (
    <>
      <p className="edit-words">
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {w("page.intake.readings-open")}
        </button>
      </p>
      <Suspense>{open && <TakeReadings {...props} />}</Suspense>
    </>
  );
}
