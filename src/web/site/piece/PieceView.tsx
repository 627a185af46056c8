import { useMemo } from "react";
import { polygonBounds } from "../../../geometry/polygon.ts";
import { drillingScene } from "../../../scene/views/drilling.ts";
import { heading } from "../../../scene/views/extent.ts";
import { pieceSum } from "../../../takeoff/issue-state.ts";
import { ScenePicture } from "../../drawing/ScenePicture.tsx";
import { useWords } from "../../words.ts";
import { FacePicture } from "../FacePicture.tsx";
import { fragmentOf } from "../route.ts";
import { TellForm } from "../TellForm.tsx";
import type { Site } from "../use-site.ts";
import { neighboursOf, SIDES } from "./neighbours.ts";
import { siteFacts } from "./piece-facts.ts";
import { ShortForm } from "./ShortForm.tsx";
import { Stages } from "./Stages.tsx";

/** What a picture of one piece may take on a phone, in millimetres of the drawing: its letters are then read at arm's length. */
const ROOM = [58, 80] as const;

const NONE: readonly string[] = [];

export function PieceView({ site, mark, sum }: { site: Site; mark: string; sum: string | undefined }) {
  const { w, s } = useWords();
  const design = site.held?.design;
  const face = design?.facade.faces.find(({ pieces }) => pieces.some((one) => one.mark === mark));
  const piece = face?.pieces.find((one) => one.mark === mark);
  const scene = useMemo(
    () => piece && drillingScene({ piece, marks: [piece.mark] }, { room: ROOM, notes: false }),
    [piece],
  );
  if (!design || !face || !piece || !scene) {
    return (
      <p className="warn" role="alert">
        {w("page.site.no-piece", { mark })}
      </p>
    );
  }
  const beside = neighboursOf(face, piece);
  const { x, y } = polygonBounds(piece.outline);
  const isHeavy = piece.massKg > design.demands.onePersonKg;
  return (
    <>
      <h2 className="mark">{mark}</h2>
      <p>{w("page.site.piece-of", { kind: piece.kind, face: heading(face.id) })}</p>
      {sum !== undefined && sum !== pieceSum(piece) && (
        <p className="warn" role="alert">
          {w("page.site.other-sum")}
        </p>
      )}
      {isHeavy && (
        <p className="warn">
          {w("page.site.two-people", { mass: piece.massKg, limit: design.demands.onePersonKg })}
        </p>
      )}
      <Stages site={site} piece={piece} />
      <ScenePicture scene={scene} picked={NONE} />
      <dl className="facts">
        {siteFacts(piece).map(({ label, values }) => (
          <div key={label.key}>
            <dt>{s(label)}</dt>
            <dd>
              {values.map((value) => (
                <div key={s(value)}>{s(value)}</div>
              ))}
            </dd>
          </div>
        ))}
      </dl>
      <FacePicture face={face} here={[mark]} />
      {SIDES.some((side) => beside[side].length > 0) && (
        <section>
          <h3>{w("page.site.neighbours")}</h3>
          <ul>
            {SIDES.flatMap((side) =>
              beside[side].map((one) => (
                <li key={`${side} ${one}`}>
                  <a className="press" href={fragmentOf({ view: "piece", mark: one })}>
                    <span>{w(`page.site.side-${side}`)}</span>
                    <b>{one}</b>
                  </a>
                </li>
              )),
            )}
          </ul>
        </section>
      )}
      <ShortForm site={site} piece={piece} />
      <TellForm
        site={site}
        place={{
          face: face.id,
          piece: mark,
          x: Math.round((x[0] + x[1]) / 2),
          y: Math.round((y[0] + y[1]) / 2),
        }}
      />
      <p className="sub">{w("drawing.method.caution")}</p>
      <p className="sub">{w("page.site.caution")}</p>
    </>
  );
}
