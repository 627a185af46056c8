import { memo, useMemo, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import type { Pick } from "../picks/pick.ts";
import { useSize } from "../sheet/use-size.ts";
import { useWords } from "../words.ts";
import { YEAR_KINDS, type Year, type YearKind } from "./year.ts";
import { yearsOf } from "./years.ts";
import "./years.css";

/** Room beside the plot for the names of the limits, and under it for the months, pixels. */
const BESIDE = 112;
const UNDER = 24;
const OVER = 10;

/** A year of what is picked, of those that can be told of it: its gap, its light, its drying. */
export const YearPlot = memo(function YearPlot({ design, pick }: { design: Design; pick: Pick }) {
  const { w, s } = useWords();
  const years = useMemo(() => yearsOf(design, pick), [design, pick]);
  const [wished, setWished] = useState<YearKind>("gap");
  const [first] = years.keys();
  const kind = years.has(wished) ? wished : first;
  const year = kind && years.get(kind);
  if (!year) return null;
  return (
    <div className="year">
      <h2>{w(`page.year.${kind}`)}</h2>
      <p className="sub">{`${w("page.tree.zone", { id: year.zone })} · ${s(year.about)}`}</p>
      <p className="unseen">{s(year.says)}</p>
      <Plot year={year} />
      <p className="sub">{s(year.range)}</p>
      {years.size > 1 && (
        <fieldset className="year-kinds">
          <legend className="unseen">{w("page.year.kinds")}</legend>
          {YEAR_KINDS.filter((one) => years.has(one)).map((one) => (
            <button type="button" key={one} aria-pressed={one === kind} onClick={() => setWished(one)}>
              {w(`page.year.${one}.short`)}
            </button>
          ))}
        </fieldset>
      )}
    </div>
  );
});

function Plot({ year: { months, limits } }: { year: Year }) {
  const { w, s } = useWords();
  const host = useRef<HTMLDivElement>(null);
  const size = useSize(host);
  const width = Math.max((size?.width ?? 0) - BESIDE, 60);
  const height = Math.max((size?.height ?? 0) - UNDER - OVER, 60);
  const all = [...limits.map(({ value }) => value), ...months.flatMap(({ least, most }) => [least, most])];
  const span = Math.max(...all) - Math.min(...all);
  const low = Math.min(...all) - span * 0.18;
  const high = Math.max(...all) + span * 0.18;
  const x = (month: number): number => ((month + 0.5) / months.length) * width;
  const y = (value: number): number => OVER + ((high - value) / (high - low)) * height;
  const line = (key: "least" | "most"): string[] => months.map((month, i) => `${x(i)} ${y(month[key])}`);
  const names = w("page.year.months").split(" ");
  const [from, to] = limits;
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
          {from && to && (
            <rect
              className="year-band"
              x={0}
              y={y(to.value)}
              width={width}
              height={y(from.value) - y(to.value)}
            />
          )}
          {limits.map(({ value, name }) => (
            <g key={value}>
              <line className="year-limit" x1={0} x2={width} y1={y(value)} y2={y(value)} />
              <text className="year-name" x={width + 6} y={y(value) + 4}>
                {s(name)}
              </text>
            </g>
          ))}
          <path
            className="year-span"
            d={`M${line("least").join("L")}L${line("most").reverse().join("L")}Z`}
          />
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
