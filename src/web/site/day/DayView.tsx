import { useMemo } from "react";
import { heading } from "../../../scene/views/extent.ts";
import { bareMembranes } from "../../../site/progress/bare-membrane.ts";
import { workByCrew } from "../../../site/progress/by-crew.ts";
import { progressOf } from "../../../site/progress/counts.ts";
import { forecastOf } from "../../../site/progress/forecast.ts";
import { orderOfWork } from "../../../site/progress/order-of-work.ts";
import { useWords } from "../../words.ts";
import { fragmentOf } from "../route.ts";
import type { Site } from "../use-site.ts";
import { CrewWorks } from "./CrewWorks.tsx";

/** Marks without a piece that are named. */
const MOST_STRAYS = 8;

/** What can be done now, by crew and lift, and what waits for which hold point; and how far each face is. */
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
  const works = useMemo(() => {
    if (!design) return [];
    const { facade, project } = design;
    return workByCrew(orderOfWork(facade, state, project.sheets?.liftHeight), project.crews);
  }, [design, state]);
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
      <CrewWorks works={works} limit={design.demands.onePersonKg} />
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
