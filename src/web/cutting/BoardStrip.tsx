import type { PileBoard } from "../../project/schema/project.ts";

/** Pixels of the pile's longest board. */
const LONG = 150;
/** Boards are drawn thicker than they are, so that a wane is seen. */
const THICKER = 3;

/** A board as it lies, its sound wood filled; what its row says of it, seen. */
export function BoardStrip({
  board: { length, width, defects, wane },
  longest,
}: {
  board: PileBoard;
  longest: number;
}) {
  const scale = LONG / longest;
  const [long, high] = [length * scale, width * scale * THICKER];
  const rind = (wane?.width ?? 0) * scale * THICKER;
  return (
    <svg
      className="drawing drawing-light board-strip"
      width={LONG + 2}
      height={high + 2}
      viewBox={`-1 -1 ${LONG + 2} ${high + 2}`}
      aria-hidden="true"
    >
      <rect className="fill-board" width={long} height={high} />
      {defects.map(({ kind, from, to }) => (
        <rect
          key={`${kind} ${from}`}
          className="fill-paper"
          x={from * scale}
          width={Math.max((to - from) * scale, 1)}
          height={high}
        />
      ))}
      {wane && (
        <rect className="fill-paper" y={wane.edge === "left" ? 0 : high - rind} width={long} height={rind} />
      )}
      <rect className="line line-detail" width={long} height={high} />
    </svg>
  );
}
