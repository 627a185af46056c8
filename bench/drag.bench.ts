/**
 * How long the page takes from a move of the hand to the facade painted as that move asks, while the demo's window is dragged
 * along its wall and then up; beside it the time between two frames of the same page at rest. `npm run build` first.
 */
import type { Page } from "playwright-core";
import { servedPage } from "./served-page.ts";

const MOVES = 60;
const ROUNDS = 4;
/** Milliseconds between two moves: a hand at sixty frames a second. */
const BEAT = 16;
/** A press that travels less is no drag, pixels. */
const START = 6;
/** For the page to come to rest. */
const REST = 600;

/** Pixels by which a painted place may miss the hand's: places are whole millimetres, here under a quarter of a pixel. */
const NEAR = 0.25;

interface Recorded {
  /** Where the opening stood before the first move. */
  start: number;
  moves: { at: number; along: number }[];
  paints: { at: number; along: number }[];
  longTasks: number[];
}

/** Runs in the browser: notes each move, and where the dragged opening stands in each frame in which the drawing is new. */
function record({ id, along }: { id: string; along: "x" | "y" }): void {
  const own: Recorded = { start: Number.NaN, moves: [], paints: [], longTasks: [] };
  (globalThis as unknown as { recorded: Recorded }).recorded = own;
  const host = document.querySelector(".drawing-host");
  if (!host) throw new Error("nothing is drawn");
  const place = (): number => {
    const box = host.querySelector(`[data-of="${id}"]`)?.getBoundingClientRect();
    return (along === "x" ? box?.left : box?.top) ?? Number.NaN;
  };
  own.start = place();
  host.addEventListener(
    "pointermove",
    (event) => {
      const { clientX, clientY, timeStamp } = event as PointerEvent;
      own.moves.push({ at: timeStamp, along: along === "x" ? clientX : clientY });
    },
    { capture: true },
  );
  const channel = new MessageChannel();
  let pending = Number.NaN;
  // A message sent from a frame's callback arrives when the frame has been painted.
  channel.port1.onmessage = () => own.paints.push({ at: performance.now(), along: pending });
  new MutationObserver(() =>
    requestAnimationFrame(() => {
      pending = place();
      channel.port2.postMessage(0);
    }),
  ).observe(host, { childList: true, subtree: true });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) own.longTasks.push(duration);
  }).observe({ type: "longtask" });
}

interface Dragged {
  readonly latencies: number[];
  readonly longTasks: number[];
}

/** Drags the window by so many pixels a move and back, `Alt` held so that no line draws it. */
async function drag(
  page: Page,
  { id, along, step }: { id: string; along: "x" | "y"; step: number },
): Promise<Dragged> {
  const box = await page.locator(`.drawing-host [data-of="${id}"]`).first().boundingBox();
  if (!box) throw new Error(`${id} is not drawn`);
  const from = [box.x + box.width / 2, box.y + box.height / 2] as const;
  await page.evaluate(record, { id, along });
  await page.mouse.move(...from);
  await page.keyboard.down("Alt");
  await page.mouse.down();
  for (let i = 0; i <= MOVES; i++) {
    const by = Math.sign(step) * START + i * step;
    await Promise.all([
      along === "x" ? page.mouse.move(from[0] + by, from[1]) : page.mouse.move(from[0], from[1] + by),
      page.waitForTimeout(BEAT),
    ]);
  }
  await page.waitForTimeout(REST);
  const { start, moves, paints, longTasks } = await page.evaluate(
    () => (globalThis as unknown as { recorded: Recorded }).recorded,
  );
  await page.mouse.up();
  await page.keyboard.up("Alt");
  await page.keyboard.press("Control+z");
  await page.waitForTimeout(REST);
  const held = along === "x" ? from[0] : from[1];
  // The first stands for the pixels by which a drag begins.
  const latencies = moves.slice(2).flatMap((move) => {
    const wanted = start + (move.along - held);
    const painted = paints.find(
      ({ at: when, along: where }) =>
        when > move.at && (step > 0 ? where >= wanted - NEAR : where <= wanted + NEAR),
    );
    return painted ? [painted.at - move.at] : [Number.POSITIVE_INFINITY];
  });
  return { latencies, longTasks };
}

/** Between frames of the page at rest. */
async function frames(page: Page): Promise<number[]> {
  return page.evaluate(
    () =>
      new Promise<number[]>((resolve) => {
        const times: number[] = [];
        let last = performance.now();
        const frame = (): void => {
          const now = performance.now();
          times.push(now - last);
          last = now;
          if (times.length < 60) requestAnimationFrame(frame);
          else resolve(times);
        };
        requestAnimationFrame(frame);
      }),
  );
}

function summed(times: readonly number[], longTasks: readonly number[]) {
  const sorted = [...times].sort((a, b) => a - b);
  const share = (part: number): number =>
    Number((sorted[Math.floor(part * (sorted.length - 1))] ?? 0).toFixed(1));
  return {
    moves: times.length,
    medianMs: share(0.5),
    p95Ms: share(0.95),
    mostMs: share(1),
    longTasks: longTasks.length,
    longestTaskMs: Math.round(Math.max(0, ...longTasks)),
  };
}

const { serving, browser } = await servedPage();
const page = await (await browser.newContext({ viewport: { width: 1680, height: 1050 } })).newPage();
await page.goto(serving.url);
await page.locator('.drawing-host [data-of="W2"]').first().waitFor();
// Edits are practised for a few seconds after the page has rested.
await page.waitForTimeout(5000);
const rest = await frames(page);
await page.locator(".view-controls button", { hasText: "Front" }).click();
await page.waitForTimeout(REST);
const box = await page.locator('.drawing-host [data-of="W2"]').first().boundingBox();
if (!box) throw new Error("the window is not drawn");
await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
const rows: Record<string, unknown> = { "frames at rest": summed(rest, []) };
for (const { name, along, step } of [
  { name: "window along the wall", along: "x", step: 1 },
  { name: "window up the wall", along: "y", step: -0.4 },
] as const) {
  await drag(page, { id: "W2", along, step });
  const all: Dragged = { latencies: [], longTasks: [] };
  for (let round = 1; round <= ROUNDS; round++) {
    // Other places each time: what the page has by heart would flatter it.
    const { latencies, longTasks } = await drag(page, { id: "W2", along, step: step * (1 + 0.07 * round) });
    all.latencies.push(...latencies);
    all.longTasks.push(...longTasks);
  }
  rows[name] = summed(all.latencies, all.longTasks);
}
console.table(rows);
await browser.close();
await serving.close();
