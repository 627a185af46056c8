import { useId, useState } from "react";
import type { RodResult } from "../../setout/facade.ts";
import { useWords } from "../words.ts";

/** The storey rod of the zone at hand, from its top down: what stands in each segment, and the gap that fills it. */
export function RodFold({ rod: { segments } }: { rod: RodResult }) {
  const { w } = useWords();
  const [open, setOpen] = useState(false);
  const list = useId();
  const courses = segments.reduce((sum, segment) => sum + segment.courses.length, 0);
  return (
    <div className="take-off">
      <button
        type="button"
        className="take-off-fold"
        aria-expanded={open}
        aria-controls={list}
        onClick={() => setOpen(!open)}
      >
        <b>{w("page.rod")}</b>{" "}
        <span className="sub">{w("page.rod.sum", { courses, segments: segments.length })}</span>
      </button>
      <div id={list} hidden={!open}>
        <ol className="rod-segments">
          {[...segments].reverse().map(({ segment, from, to, gap, courses: own }) => (
            <li key={segment}>
              <b>{w("page.rod.segment", { from, to })}</b>{" "}
              <span>{w("page.rod.gap", { gap, boards: own.length })}</span>{" "}
              <span className="sub">
                {widthsOf(own)
                  .map(([width, count]) => w("page.rod.width", { width, count }))
                  .join(", ")}
              </span>
            </li>
          ))}
        </ol>
      </div>
    </div>
  );
}

/** How many boards of each width, the widest first. */
function widthsOf(courses: RodResult["segments"][number]["courses"]): [width: number, count: number][] {
  const counts = new Map<number, number>();
  for (const { width } of courses) counts.set(width, (counts.get(width) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => b - a);
}
