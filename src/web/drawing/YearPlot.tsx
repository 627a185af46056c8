import { useMemo, useRef } from "react";
import type { Design } from "../../design.ts";
import type { Pick } from "../picks/pick.ts";
import { useSize } from "../sheet/use-size.ts";
import { useWords } from "../words.ts";
import { type GapYear, gapYear } from "./year.ts";

/** Room beside the plot for the names of the limits, and under it for the months, pixels. */
const BESIDE = 92;
const UNDER = 24;
const OVER = 10;

/** The gap through the year against its band; nothing where there are no boards. */
export function YearPlot({ design, pick }: { design: Design; pick: Pick }) {
  const { w } = useWords();
  const year = useMemo(() => gapYear(design, pick), [design, pick]);
  if (!year) return null;
  const least = Math.min(...year.months.map((month) => month.least));
  const most = Math.max(...year.months.map((month) => month.most));
  const [from, to] = year.band;
  return (
    <div className="year">
      <h2>{w("page.year")}</h2>
      <p className="sub">{w("page.year.about", { kind: "boards", percent: year.fixingPercent })}</p>
      <p className="unseen">{w("page.year.says", { least, most, from, to })}</p>
      <Plot year={year} />
      <p className="sub">{w("page.year.gap", { least, most })}</p>
    </div>
  );
}

function Plot({ year: { months, band } }: { year: GapYear }) {
  const { w } = useWords();
  const host = useRef<HTMLDivElement>(null);
  const size = useSize(host);
  const width = Math.max((size?.width ?? 0) - BESIDE, 60);
  const height = Math.max((size?.height ?? 0) - UNDER - OVER, 60);
  const all = [...band, ...months.flatMap(({ least, most }) => [least, most])];
  const span = Math.max(...all) - Math.min(...all);
  const low = Math.min(...all) - span * 0.18;
  const high = Math.max(...all) + span * 0.18;
  const x = (month: number): number => ((month + 0.5) / months.length) * width;
  const y = (gap: number): number => OVER + ((high - gap) / (high - low)) * height;
  const line = (key: "least" | "most"): string[] => months.map((month, i) => `${x(i)} ${y(month[key])}`);
  const names = w("page.year.months").split(" ");
  return (
    <div className="year-host" ref={host}>
      {size && (
        <svg
          width={size.width}
          height={size.height}
          viewBox={`0 0 ${size.width} ${size.height}`}
          preserveAspectRatio="xMinYMin meet"
          aria-hidden="true"
        >
          <rect className="year-band" x={0} y={y(band[1])} width={width} height={y(band[0]) - y(band[1])} />
          {band.map((limit) => (
            <g key={limit}>
              <line className="year-limit" x1={0} x2={width} y1={y(limit)} y2={y(limit)} />
              <text className="year-name" x={width + 6} y={y(limit) + 4}>
                {w("page.year.limit", { value: limit })}
              </text>
            </g>
          ))}
          <path className="year-gap" d={`M${line("least").join("L")}L${line("most").reverse().join("L")}Z`} />
          <path className="year-edge" d={`M${line("most").join("L")}`} />
          <path className="year-edge" d={`M${line("least").join("L")}`} />
          <path className="year-axis" d={`M0 ${OVER}V${OVER + height}H${width}`} />
          {names.map((name, i) => (
            <text
              // biome-ignore lint/suspicious/noArrayIndexKey: the months keep their order, and their letters repeat
              key={i}
              className="year-month"
              x={x(i)}
              y={OVER + height + 16}
              textAnchor="middle"
            >
              {name}
            </text>
          ))}
        </svg>
      )}
    </div>
  );
}
