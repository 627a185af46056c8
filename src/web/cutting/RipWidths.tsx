import { useEffect, useRef, useState } from "react";
import type { RipChoice, RipChoices } from "../../cutting/facade/rip-choice.ts";
import type { Design } from "../../design.ts";
import { message } from "../../text/message.ts";
import { sayLength, sayNumber } from "../../text/say.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { type RipsReply, weighRips } from "../work/rips.ts";

/** Choices in the table at most, the present one besides. */
const SHOWN = 8;

/** The widths to rip the pile to, weighed by rod and pile together when the reader asks, each taken in one press. */
export function RipWidths({ design, onEdit }: { design: Design; onEdit(edit: Edit): void }) {
  const { w } = useWords();
  const { project, demands, facade } = design;
  const [state, setState] = useState<"idle" | "busy" | RipsReply>("idle");
  const running = useRef<{ leave(): void }>(undefined);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was weighed for another facade is of no use
  useEffect(
    () => () => {
      running.current?.leave();
      setState("idle");
    },
    [facade],
  );
  const weigh = (): void => {
    setState("busy");
    const weighing = weighRips({ project, demands, facade });
    running.current = weighing;
    void weighing.answer.then(setState);
  };
  if (state === "idle" || state === "busy") {
    return (
      <p className="search-on">
        <button type="button" disabled={state === "busy"} onClick={weigh}>
          {w(state === "busy" ? "page.rips.busy" : "page.rips.weigh")}
        </button>
      </p>
    );
  }
  if (!state) return <p role="alert">{w("page.rips.failed")}</p>;
  return (
    <div className="rip-widths">
      {state.length === 0 && <p>{w("page.rips.none")}</p>}
      {state.map((found) => (
        <Rod key={found.rod} found={found} onEdit={onEdit} />
      ))}
    </div>
  );
}

function Rod({ found, onEdit }: { found: RipChoices; onEdit(edit: Edit): void }) {
  const { w, reader } = useWords();
  const { rod, choices } = found;
  const shown = choices.filter((one, at) => at < SHOWN || one.present);
  const widths = (one: RipChoice): string[] => one.widths.map((width) => sayLength(width, reader));
  return (
    <section>
      <h3>{w("page.rips.rod", { rod })}</h3>
      <Curve found={found} />
      <table>
        <thead>
          <tr>
            {["widths", "gaps", "buy", "left"].map((key) => (
              <th scope="col" key={key}>
                {w(`page.rips.${key}`)}
              </th>
            ))}
            <th scope="col">
              <span className="unseen">{w("page.rips.take")}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((one) => (
            <tr key={one.widths.join(" ")}>
              <th scope="row">{widths(one).join(" + ")}</th>
              <td>{`${sayLength(one.gaps.least, reader)} – ${sayLength(one.gaps.most, reader)}`}</td>
              <td>{sayNumber(one.toBuyM2, 2, reader)}</td>
              <td>{sayNumber(one.leftM2, 2, reader)}</td>
              <td className="word">
                {one.present ? (
                  w("page.rips.present")
                ) : (
                  <button
                    type="button"
                    className="here"
                    aria-label={w("page.rips.take-these", { widths: widths(one) })}
                    onClick={() =>
                      onEdit({
                        operations: one.edit,
                        says: message("project.edit.widths", { widths: widths(one) }),
                      })
                    }
                  >
                    {w("page.rips.take")}
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="sub">{w("page.rips.about")}</p>
    </section>
  );
}

/** Pixels of the plot. */
const WIDE = 420;
const HIGH = 110;
const EDGE = 8;

/** The share of the pile that becomes strip of each width by itself, with the widths that the boards have now. */
function Curve({ found: { curve, choices } }: { found: RipChoices }) {
  const { w, reader } = useWords();
  const first = curve[0]?.widths[0] ?? 0;
  const last = curve.at(-1)?.widths[0] ?? first + 1;
  const most = Math.max(...curve.map((one) => one.yield));
  const best = curve.find((one) => one.yield === most)?.widths[0] ?? first;
  const x = (width: number): number => EDGE + ((width - first) / (last - first)) * (WIDE - 2 * EDGE);
  const y = (share: number): number => HIGH - EDGE - (share / most) * (HIGH - 2 * EDGE);
  const now = choices.find(({ present }) => present)?.widths ?? [];
  const says = w("page.rips.curve", {
    from: first,
    to: last,
    best,
    percent: 100 * most,
  });
  return (
    <figure>
      <svg className="closing rip-curve" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={says}>
        {now.map((width) => (
          <path key={width} className="closing-bound" d={`M${x(width)} ${EDGE}V${HIGH - EDGE}`} />
        ))}
        <path
          className="closing-cost"
          d={`M${curve.map((one) => `${x(one.widths[0] ?? first)} ${y(one.yield)}`).join("L")}`}
        />
        <text x={EDGE} y={HIGH - EDGE - 3}>
          {sayLength(first, reader)}
        </text>
        <text x={WIDE - EDGE} y={HIGH - EDGE - 3} textAnchor="end">
          {sayLength(last, reader)}
        </text>
      </svg>
      <figcaption className="sub">{says}</figcaption>
    </figure>
  );
}
