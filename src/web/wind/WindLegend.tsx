import type { Design } from "../../design.ts";
import type { Point } from "../../geometry/point.ts";
import type { FaceUse, PartUse, ScrewPlaceUse } from "../../proof/wind/uses.ts";
import { heading } from "../../scene/views/extent.ts";
import { legendOfUses } from "../../scene/views/wind-use.ts";
import { message } from "../../text/message.ts";
import { ScenePicture } from "../drawing/ScenePicture.tsx";
import type { Pick } from "../picks/pick.ts";
import { useWords } from "../words.ts";
import "./wind.css";

const LEGEND = legendOfUses(1);
const NOTHING: readonly string[] = [];

/** Beside the drawing: what its hatches say, the strips with their pressures, and what governs, each a press away. */
export default function WindLegend({
  design,
  uses,
  open,
  onGo,
}: {
  design: Design;
  uses: readonly FaceUse[];
  open: boolean;
  onGo: (pick: Pick, at?: Point) => void;
}) {
  const { w, s } = useWords();
  const lacks = design.findings.filter(({ code }) => code === "P054");
  return (
    <details className="wind-legend" open={open}>
      <summary>{w("page.wind")}</summary>
      {uses.length === 0 ? (
        <>
          <p>{w("page.wind.unknown")}</p>
          <ul>
            {lacks.map(({ where, says }) => (
              <li key={where.path}>{s(says)}</li>
            ))}
          </ul>
        </>
      ) : (
        <div className="wind-said">
          <ScenePicture scene={LEGEND} picked={NOTHING} />
          <div>
            <h2>{w("page.wind.strips")}</h2>
            <ul>
              {strips(uses).map(({ strip, pullPa, pushPa }) => (
                <li key={strip.id}>
                  {w(`page.wind.strip-${strip.id}`, {
                    to: strip.toMm ?? 0,
                    pull: pullPa,
                    push: pushPa,
                  })}
                </li>
              ))}
            </ul>
            <p className="sub">{w("page.wind.left-out")}</p>
          </div>
          <div>
            <h2>{w("page.wind.governs")}</h2>
            <ul className="wind-governs">
              {governing(uses).map(({ face, use, what, at }) => (
                <li key={what}>
                  <button type="button" onClick={() => onGo({ kind: "piece", face, id: use.mark }, at)}>
                    {w(`page.wind.${what}`, {
                      mark: use.mark,
                      face: heading(face),
                      percent: (use.use ?? 0) * 100,
                      way: message(`page.wind.way-${use.governs}`),
                    })}
                  </button>
                </li>
              ))}
            </ul>
          </div>
        </div>
      )}
    </details>
  );
}

/** Each kind of strip once; they are alike on all faces. */
function strips(uses: readonly FaceUse[]): FaceUse["bands"] {
  const found = new Map(uses.flatMap(({ bands }) => bands.map((band) => [band.strip.id, band] as const)));
  return [...found.values()];
}

interface Governing {
  readonly what: "skin" | "batten" | "skin-screw" | "batten-screw";
  readonly face: string;
  readonly use: PartUse;
  readonly at?: Point;
}

function governing(uses: readonly FaceUse[]): Governing[] {
  const screws = (holds: ScrewPlaceUse["holds"]) => (one: FaceUse) =>
    one.screws.filter((screw) => screw.holds === holds);
  return [
    most("skin", uses, ({ skins }) => skins),
    most("batten", uses, ({ carriers }) => carriers),
    most("skin-screw", uses, screws("skin")),
    most("batten-screw", uses, screws("carriers")),
  ].filter((one) => one !== undefined);
}

function most(
  what: Governing["what"],
  uses: readonly FaceUse[],
  of: (one: FaceUse) => readonly (PartUse & { readonly at?: Point })[],
): Governing | undefined {
  let best: Governing | undefined;
  for (const one of uses)
    for (const use of of(one))
      if (use.use !== undefined && use.use > (best?.use.use ?? 0))
        best = { what, face: one.face, use, ...(use.at && { at: use.at }) };
  return best;
}
