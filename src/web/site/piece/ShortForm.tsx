import { useState } from "react";
import type { Piece } from "../../../setout/facade.ts";
import { SHORTAGES } from "../../../site/journal/entry.ts";
import { useWords } from "../../words.ts";
import type { Site } from "../use-site.ts";

/** Tells that a piece must be made again, by one press for each reason, and takes it back when it is there. */
export function ShortForm({ site, piece }: { site: Site; piece: Piece }) {
  const { w } = useWords();
  const [isOpen, setOpen] = useState(false);
  const [isKept, setKept] = useState(true);
  const place = { face: piece.face, piece: piece.mark };
  const short = site.state.short.filter((one) => one.place.piece === piece.mark);
  const tell = async (why: (typeof SHORTAGES)[number]): Promise<void> => {
    setKept(await site.tell({ kind: "short", place, body: { why } }));
    setOpen(false);
  };
  const back = async (): Promise<void> =>
    setKept(await site.tell({ kind: "undone", place, body: {}, corrects: short.map(({ id }) => id) }));
  return (
    <section>
      {short.length > 0 ? (
        <>
          <p className="warn">{w("page.site.is-short")}</p>
          <button type="button" onClick={() => void back()}>
            {w("page.site.short-back")}
          </button>
        </>
      ) : (
        <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {w("page.site.short")}
        </button>
      )}
      {isOpen &&
        SHORTAGES.map((why) => (
          <button key={why} type="button" onClick={() => void tell(why)}>
            {w(`page.site.short-${why}`)}
          </button>
        ))}
      {!isKept && (
        <p className="warn" role="alert">
          {w("page.site.not-kept")}
        </p>
      )}
    </section>
  );
}
