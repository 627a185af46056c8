import type { RodResult } from "../../setout/facade.ts";
import { useWords } from "../words.ts";
import { Fold } from "./Fold.tsx";

/** The storey rod of the zone at hand, from its top down: what stands in each segment, and the gap that fills it. */
export function RodFold({ rod: { segments } }: { rod: RodResult }) {
  const { w } = useWords();
  const courses = segments.reduce((sum, segment) => sum + segment.courses.length, 0);
  return (
    <Fold title={w("page.rod")} sum={w("page.rod.sum", { courses, segments: segments.length })}>
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
    </Fold>
  );
}

/** How many boards of each width, the widest first. */
function widthsOf(courses: RodResult["segments"][number]["courses"]): [width: number, count: number][] {
  const counts = new Map<number, number>();
  for (const { width } of courses) counts.set(width, (counts.get(width) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => b - a);
}
