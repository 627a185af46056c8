import { useMemo } from "react";
import { heading } from "../../../scene/views/extent.ts";
import { bareMembranes } from "../../../site/progress/bare-membrane.ts";
import { progressOf } from "../../../site/progress/counts.ts";
import { forecastOf } from "../../../site/progress/forecast.ts";
import { orderOfWork, type WorkStep } from "../../../site/progress/order-of-work.ts";
import { useWords } from "../../words.ts";
import { fragmentOf } from "../route.ts";
import type { Site } from "../use-site.ts";

/** Marks without a piece that are named. */
const MOST_STRAYS = 8;

/** What can be done now, face by face and lift by lift, and what waits for which hold point. */
export function DayView({ site }: { site: Site }) {
  const { w, s } = useWords();
  const design = site.held?.design;
  const { state } = site;
  const far = useMemo(() => {
    if (!design) return undefined;
    const now = new Date().toISOString();
    return {
      progress: progressOf(design.facade, state),
      forecast: forecastOf(design.facade, state, now),
      bare: bareMembranes(design, state, now),
    };
  }, [design, state]);
  const steps = useMemo(
    () => (design ? orderOfWork(design.facade, state, design.project.sheets?.liftHeight) : []),
    [design, state],
  );
  if (!design || !far) return null;
  return (
    <>
      <h2>{w("page.site.day")}</h2>
      <p className="sub">{w("drawing.method.weight", { limit: design.demands.onePersonKg })}</p>
      <p>{s(far.forecast.says)}</p>
      {far.progress.strays.length > 0 && (
        <p className="warn">{w("page.site.strays", { marks: far.progress.strays.slice(0, MOST_STRAYS) })}</p>
      )}
      {state.short.length > 0 && (
        <section>
          <h3>{w("page.site.shorts")}</h3>
          <ul>
            {state.short.map(({ id, place, body }) => (
              <li key={id}>
                <a className="press" href={fragmentOf({ view: "piece", mark: place.piece })}>
                  <b>{place.piece}</b>
                  <span>{w(`page.site.short-${body.why}`)}</span>
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
      {design.facade.faces.map(({ id }) => (
        <section key={id}>
          <h3>{w("page.site.face", { face: heading(id) })}</h3>
          {far.progress.faces
            .filter(({ face }) => face === id)
            .map(({ all, reached }) => (
              <p key={id}>
                {w("page.site.far", {
                  fixed: reached.fixed.pieces,
                  all: all.pieces,
                  fixedArea: reached.fixed.areaM2,
                  area: all.areaM2,
                  cut: reached.cut.pieces,
                })}
              </p>
            ))}
          {far.bare
            .filter(({ face }) => face === id)
            .map(({ outcome, says }) => (
              <p key={id} className={outcome === "fail" ? "warn" : "sub"}>
                {s(says)}
              </p>
            ))}
          <ul>
            {steps
              .filter(({ face }) => face === id)
              .map((step) => (
                <Step
                  key={`${step.step} ${step.lift ?? ""}`}
                  step={step}
                  limit={design.demands.onePersonKg}
                />
              ))}
          </ul>
          <a className="press" href={fragmentOf({ view: "survey", face: id })}>
            {w("page.site.readings")}
          </a>
          <a className="press" href={fragmentOf({ view: "openings", face: id })}>
            {w("page.site.measures")}
          </a>
        </section>
      ))}
      <p className="sub">{w("drawing.method.caution")}</p>
    </>
  );
}

function Step({ step, limit }: { step: WorkStep; limit: number }) {
  const { w } = useWords();
  const { face, lift, lot, left, marks, massKg, heaviest, status, hold, waitsFor } = step;
  const name = w(`drawing.method.${step.step}`);
  const isOpen = status === "can" || status === "sign";
  return (
    <li>
      <details open={isOpen}>
        <summary className="press">
          <span>{lift === undefined ? name : w("page.site.lift", { name, lift })}</span>
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
