import { useWords } from "../words.ts";

/** One line on the first visit; the title block has the walk at any time. */
export function WalkOffer({ onWalk, onDecline }: { onWalk: () => void; onDecline: () => void }) {
  const { w } = useWords();
  return (
    <p className="walk-offer">
      <span>{w("page.walk-offer")}</span>
      <button type="button" onClick={onWalk}>
        {w("page.walk")}
      </button>
      <button type="button" onClick={onDecline}>
        {w("page.walk-decline")}
      </button>
    </p>
  );
}
