import { heading } from "../../../scene/views/extent.ts";
import type { CrewWork } from "../../../site/progress/by-crew.ts";
import type { WorkStep } from "../../../site/progress/order-of-work.ts";
import { useWords } from "../../words.ts";
import { fragmentOf } from "../route.ts";

/** The work as it is given out: crew by crew, and for each lift by lift. Where the file names no crew only the lifts part it. */
export function CrewWorks({ works, limit }: { works: readonly CrewWork[]; limit: number }) {
  const { w } = useWords();
  const hasCrews = works.some(({ crew }) => crew !== undefined);
  return works.map(({ crew, lifts }) => (
    <section key={crew ?? ""}>
      {hasCrews && <h3>{crew === undefined ? w("page.site.no-crew") : w("page.site.crew", { crew })}</h3>}
      {lifts.map(({ lift, steps }) => {
        const name = lift === undefined ? w("page.site.whole-height") : w("page.site.by-lift", { lift });
        return (
          <div key={lift ?? ""}>
            {hasCrews ? <h4>{name}</h4> : <h3>{name}</h3>}
            <ul>
              {steps.map((step) => (
                <Step key={`${step.face} ${step.step}`} step={step} limit={limit} />
              ))}
            </ul>
          </div>
        );
      })}
    </section>
  ));
}

function Step({ step, limit }: { step: WorkStep; limit: number }) {
  const { w } = useWords();
  const { face, lot, left, marks, massKg, heaviest, status, hold, waitsFor } = step;
  const name = w(`drawing.method.${step.step}`);
  const isOpen = status === "can" || status === "sign";
  return (
    <li>
      <details open={isOpen}>
        <summary className="press">
          <span>{w("page.site.step-on", { face: heading(face), name })}</span>
          <b>{w(`page.site.status-${status}`, { left: left.length, of: marks.length })}</b>
        </summary>
        {waitsFor && <p>{w("page.site.waits-for", { point: waitsFor })}</p>}
        <p className="sub">{w("page.site.load", { lot, mass: massKg })}</p>
        <p className="sub">
          {w(heaviest.massKg > limit ? "drawing.method.two" : "drawing.method.one", heaviest)}
        </p>
        {isOpen && (
          <ul>
            {left.map((mark) => (
              <li key={mark}>
                <a className="press" href={fragmentOf({ view: "piece", mark })}>
                  {mark}
                </a>
              </li>
            ))}
          </ul>
        )}
        {hold && status !== "done" && (
          <a className="press" href={fragmentOf({ view: "hold", face, point: hold })}>
            {w("page.site.sign-hold", { point: hold })}
          </a>
        )}
      </details>
    </li>
  );
}
