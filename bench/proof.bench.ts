/**
 * How long the demo takes to be designed and proven: from scratch, and after an edit with the memos that the page's worker
 * has, its window W2 moved along the wall a millimetre at a time. Proof alone stands beside it, with and without its own
 * memo, and the rules of wind and of what hangs by themselves. All are timed on the same project one after another, so that a busy machine slows them alike.
 */
import { demandsOf } from "../src/codes/demands.ts";
import { design } from "../src/design.ts";
import { type FaceContext, proofContext } from "../src/proof/context.ts";
import { faceContexts } from "../src/proof/face-contexts.ts";
import { WIND_RULES } from "../src/proof/face-rules.ts";
import { hungLoad } from "../src/proof/hung-load.ts";
import { prove } from "../src/proof/index.ts";
import { createSunMemo } from "../src/proof/light/sun-memo.ts";
import { createProofMemo } from "../src/proof/proof-memo.ts";
import { createFaceMemo } from "../src/setout/memo.ts";
import { exampleDocument, readAs } from "./buildings.ts";

const EDITS = 200;
const WARM_UP = 200;
/** Where W2's left jamb starts, so that all places lie clear of the corner and of the door (mm). */
const FIRST = 700;

const projects = Array.from({ length: WARM_UP + EDITS }, (_, i) => {
  const document = exampleDocument("atelier-bouleau");
  const front = document.faces.find(({ id }) => id === "front");
  const window = front?.openings?.find(({ id }) => id === "W2");
  if (!window) throw new Error("the demo has no window W2 in front");
  Object.assign(window, { x: [FIRST + i, FIRST + 900 + i] });
  return readAs(document, "edit");
});

/** Memos of one way of working, apart from those of the others. */
function memos() {
  return {
    faces: createFaceMemo({ spare: 24, shareds: 3 }),
    proof: createProofMemo(),
  };
}

/** What an engineer signs for: wind, strength, sag, screws, aim, and what hangs through insulation. */
const STRUCTURE = [...WIND_RULES, hungLoad];
/** Faces as the edit before left them. */
let before: ReadonlySet<unknown> = new Set();

function structure(contexts: readonly FaceContext[]): void {
  for (const context of contexts) for (const rule of STRUCTURE) rule(context);
}

const whole = memos();
const apart = memos();
const times: Record<string, number[]> = {};

function timed<Result>(name: string, work: () => Result): Result {
  const start = performance.now();
  const result = work();
  const own = times[name] ?? [];
  own.push(performance.now() - start);
  times[name] = own;
  return result;
}

for (const project of projects) {
  timed("from scratch, the sun too", () =>
    design(project, { light: { memo: createSunMemo({ places: 1 }) } }),
  );
  timed("from scratch", () => design(project));
  timed("after an edit", () => design(project, whole));
  const demands = demandsOf(project);
  const { facade } = design(project, { faces: apart.faces });
  const input = { project, facade, demands };
  timed("proof alone, sun kept", () => prove(input));
  timed("proof alone, sun and faces kept", () => prove(input, apart.proof));
  timed("structure alone", () => structure(faceContexts(proofContext(input))));
  timed("structure of the faces that the edit touched", () =>
    structure(faceContexts(proofContext(input)).filter(({ zones: [first] }) => !before.has(first?.face))),
  );
  before = new Set(facade.faces);
}

console.table(
  Object.fromEntries(
    Object.entries(times).map(([name, all]) => {
      const sorted = all.slice(WARM_UP).sort((a, b) => a - b);
      const at = (share: number): number => Number((sorted[Math.floor(share * EDITS)] ?? 0).toFixed(1));
      return [name, { leastMs: at(0), medianMs: at(0.5), p95Ms: at(0.95) }];
    }),
  ),
);
