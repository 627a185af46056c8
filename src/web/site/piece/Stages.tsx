import { useState } from "react";
import type { Piece } from "../../../setout/facade.ts";
import { STAGES, type Stage } from "../../../site/journal/entry.ts";
import type { Tick } from "../../../site/journal/piece-state.ts";
import { useWords } from "../../words.ts";
import type { Site } from "../use-site.ts";

/** As many entries can be taken back by one. */
const MOST = 50;

/** The stages of a piece, each told by one press; what was told is taken back by a press that says so. */
export function Stages({ site, piece }: { site: Site; piece: Piece }) {
  const { w } = useWords();
  const [isKept, setKept] = useState(true);
  const ticks = site.state.pieces.of(piece.mark)?.ticks ?? {};
  const place = { face: piece.face, piece: piece.mark };
  const tick = async (stage: Stage): Promise<void> =>
    setKept(await site.tell({ kind: "piece", place, body: { stage } }));
  const takeBack = async (told: readonly Tick[]): Promise<void> => {
    const corrects = told.slice(0, MOST).map(({ id }) => id);
    setKept(await site.tell({ kind: "undone", place, body: {}, corrects }));
  };
  return (
    <section aria-label={w("page.site.stages")}>
      <div className="stages">
        {STAGES.map((stage) => (
          <button
            key={stage}
            type="button"
            className={ticks[stage] ? "told" : ""}
            aria-pressed={ticks[stage] !== undefined}
            onClick={() => !ticks[stage] && void tick(stage)}
          >
            <span>{w(`page.site.stage-${stage}`)}</span>
            <span aria-hidden="true">{ticks[stage] ? "✓" : "○"}</span>
          </button>
        ))}
      </div>
      {STAGES.map((stage) => {
        const own = ticks[stage];
        return (
          own && (
            <button key={stage} type="button" onClick={() => void takeBack(own)}>
              {w(`page.site.back-${stage}`)}
            </button>
          )
        );
      })}
      {!isKept && (
        <p className="warn" role="alert">
          {w("page.site.not-kept")}
        </p>
      )}
    </section>
  );
}
