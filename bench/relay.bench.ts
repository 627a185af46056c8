/**
 * How long the demo takes to follow an opening that moves, half a millimetre at a time: with the memos that the
 * page's worker has, and from scratch. Side by side in one run after warm-up; reading the edited file is not counted.
 */
import { design } from "../src/design.ts";
import { createProofMemo } from "../src/proof/proof-memo.ts";
import { createFaceMemo } from "../src/setout/memo.ts";
import { exampleDocument, readAs } from "./buildings.ts";

const MOVES = 120;
const WARM_UP = 40;

// biome-ignore lint/suspicious/noExplicitAny: edits of the raw document.
type Loose = any;

interface Move {
  readonly name: string;
  readonly edit: (openings: Loose, by: number) => void;
}

const MOVES_OF: readonly Move[] = [
  { name: "window along the wall", edit: ([, w2], by) => Object.assign(w2, { x: [750 + by, 1650 + by] }) },
  { name: "door along the wall", edit: ([d1], by) => Object.assign(d1, { x: [3611.5 + by, 5998.5 + by] }) },
  { name: "window's sill", edit: ([, w2], by) => Object.assign(w2, { y: [920 - by, 2100] }) },
];

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[times.length >> 1] ?? 0;
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const memo = createFaceMemo({ faces: 500, shareds: 3 });
const proof = createProofMemo();
console.table(
  MOVES_OF.map(({ name, edit }) => {
    const projects = Array.from({ length: MOVES + WARM_UP }, (_, i) => {
      const document: Loose = exampleDocument("atelier-bouleau");
      edit(document.faces.find(({ id }: Loose) => id === "front").openings, i * 0.5);
      return readAs(document, name);
    });
    const kept: number[] = [];
    const scratch: number[] = [];
    for (const project of projects) {
      kept.push(timed(() => design(project, { faces: memo, proof })));
      scratch.push(timed(() => design(project)));
    }
    const [keptMs, scratchMs] = [median(kept.slice(WARM_UP)), median(scratch.slice(WARM_UP))];
    return {
      move: name,
      medianMs: Number(keptMs.toFixed(1)),
      leastMs: Number(Math.min(...kept.slice(WARM_UP)).toFixed(1)),
      "from scratch ms": Number(scratchMs.toFixed(1)),
      share: Number((keptMs / scratchMs).toFixed(2)),
    };
  }),
);
