import { useWords } from "../../words.ts";
import { NEW_THINGS } from "./new-thing.ts";
import type { Draw } from "./use-draw.ts";

/** At the sheet's edge: what can be added to a face, in words. */
export function DrawControls({ draw, onLine }: { draw: Draw; onLine(): void }) {
  const { w } = useWords();
  return (
    <fieldset className="draw-controls">
      <legend className="unseen">{w("page.draw.add")}</legend>
      <span aria-hidden="true">{w("page.draw.add")}</span>
      {NEW_THINGS.map((thing) => (
        <button
          type="button"
          key={thing}
          aria-pressed={draw.thing === thing}
          aria-label={w("page.draw.add-thing", { kind: thing })}
          onClick={() => draw.begin(draw.thing === thing ? undefined : thing)}
        >
          {w(`term.${thing}`)}
        </button>
      ))}
      <button type="button" aria-label={w("page.draw.add-thing", { kind: "line" })} onClick={onLine}>
        {w("term.line")}
      </button>
    </fieldset>
  );
}
