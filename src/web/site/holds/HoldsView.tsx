import { heading } from "../../../scene/views/extent.ts";
import { HOLD_POINTS } from "../../../site/journal/entry.ts";
import { useWords } from "../../words.ts";
import { fragmentOf } from "../route.ts";
import type { Site } from "../use-site.ts";

/** The hold points of every face: signed, or to be signed before they are covered. */
export function HoldsView({ site }: { site: Site }) {
  const { w } = useWords();
  const faces = site.held?.design.facade.faces ?? [];
  return (
    <>
      <h2>{w("page.site.holds")}</h2>
      <p className="sub">{w("page.site.holds-why")}</p>
      {faces.map(({ id }) => (
        <section key={id}>
          <h3>{w("page.site.face", { face: heading(id) })}</h3>
          <ul>
            {HOLD_POINTS.map((point) => {
              const isSigned = site.state.holdPoints.some(
                ({ place, body }) => place.face === id && body.point === point,
              );
              return (
                <li key={point}>
                  <a className="press" href={fragmentOf({ view: "hold", face: id, point })}>
                    <span>
                      {point} {w(`page.site.hold-${point}`)}
                    </span>
                    <b>{w(isSigned ? "page.site.signed" : "page.site.unsigned")}</b>
                  </a>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </>
  );
}
