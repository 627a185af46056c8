/**
 * How long the demo takes to follow an opening that moves, half a millimetre at a time: set out anew, and proven as well,
 * with the memos that the page's worker has and from scratch. Side by side in one run after warm-up; reading the edited
 * file is not counted.
 */
import { demandsOf } from "../src/codes/demands.ts";
import { design } from "../src/design.ts";
import { createProofMemo } from "../src/proof/proof-memo.ts";
import { createFaceMemo } from "../src/setout/memo.ts";
import { setOut } from "../src/setout/set-out.ts";
import { exampleDocument, readAs } from "./buildings.ts";

const MOVES = 120;
const WARM_UP = 160;
/** Moves that follow one another before another way of working takes its turn, which leaves its own garbage. */
const IN_A_ROW = 20;

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

function rounded(ms = 0): number {
  return Number(ms.toFixed(1));
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const memo = createFaceMemo({ spare: 24, shareds: 3 });
/** Another one, for what is proven too: a face is laid out anew for each. */
const provenMemo = createFaceMemo({ spare: 24, shareds: 3 });
const proof = createProofMemo();
console.table(
  MOVES_OF.map(({ name, edit }) => {
    const projects = Array.from({ length: MOVES + WARM_UP }, (_, i) => {
      const document: Loose = exampleDocument("atelier-bouleau");
      edit(document.faces.find(({ id }: Loose) => id === "front").openings, i * 0.5);
      return readAs(document, name);
    });
    const laid: number[] = [];
    const proven: number[] = [];
    const scratch: number[] = [];
    for (let from = 0; from < projects.length; from += IN_A_ROW) {
      const some = projects.slice(from, from + IN_A_ROW);
      for (const one of some) laid.push(timed(() => setOut(one, demandsOf(one), { memo })));
      for (const one of some) proven.push(timed(() => design(one, { faces: provenMemo, proof })));
      for (const one of some) scratch.push(timed(() => design(one)));
    }
    const [laidMs, provenMs, scratchMs] = [laid, proven, scratch].map((times) =>
      median(times.slice(WARM_UP)),
    );
    return {
      move: name,
      "set out medianMs": rounded(laidMs),
      "set out leastMs": rounded(Math.min(...laid.slice(WARM_UP))),
      "proven too medianMs": rounded(provenMs),
      "from scratch medianMs": rounded(scratchMs),
      share: Number(((provenMs ?? 0) / (scratchMs ?? 1)).toFixed(2)),
    };
  }),
);
