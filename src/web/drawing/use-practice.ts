/**
 * While the page rests, imagined edits are set out, and drawn unseen into groups that stand in no document: a browser compiles for
 * speed what has run often, and would do so beside the first moves of a hand.
 */
import { useEffect, useLayoutEffect, useRef } from "react";
import type { Design, Laid } from "../../design.ts";
import type { PatchOperation } from "../../findings/finding.ts";
import type { Handle } from "../edit/handles/handle.ts";
import { handleOf } from "../edit/handles/index.ts";
import { AS_GIVEN } from "../edit/snap.ts";
import type { ProjectState } from "../sheet/use-project.ts";
import type { Camera } from "./camera.ts";
import { drawElevation, type ElevationOptions } from "./elevation.ts";
import { type DrawnLayer, redraw, svgGroup } from "./redraw.ts";

/** While nothing is picked: the rest before edits are practised, and how long they are at most, milliseconds. */
const UNPICKED_REST = 700;
const BEFOREHAND = 2500;

/** So long after a hand moved or pressed anything on the page nothing is practised, milliseconds. */
const HAND_REST = 250;
const BY_HAND = ["pointermove", "pointerdown", "keydown", "wheel"] as const;

export interface PracticeOptions {
  readonly design: Design | undefined;
  readonly document: unknown;
  /** Of what is picked, which may be dragged next. */
  readonly handle: Handle | undefined;
  readonly camera: Camera | undefined;
  /** How a hand's moves would be drawn. */
  readonly drawing: Omit<ElevationOptions, "moving">;
  practise: ProjectState["practise"];
}

export function usePractice({ design, document, handle, camera, drawing, practise }: PracticeOptions): void {
  const latest = useRef(drawing);
  useLayoutEffect(() => {
    latest.current = drawing;
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: who looks about meanwhile is not held up
  useEffect(() => {
    const draw = unseen(() => latest.current);
    if (handle) return whileStill(0, () => practise((nth) => imagined(handle, nth), draw));
    if (!design) return undefined;
    return whileStill(UNPICKED_REST, () => {
      // Before anything is picked, an opening stands for all that may be.
      const first = anOpening(design, document);
      const until = performance.now() + BEFOREHAND;
      const imagine = (nth: number) =>
        first && performance.now() < until ? imagined(first, nth) : undefined;
      return practise(imagine, draw);
    });
  }, [design, document, handle, camera, practise]);
}

/**
 * Begins after a rest, stops with every move of a hand and begins again after it: who is about to press something waits for nothing
 * that was only imagined.
 */
function whileStill(rest: number, begin: () => () => void): () => void {
  let stop: (() => void) | undefined;
  const after = (ms: number) =>
    setTimeout(() => {
      stop = begin();
    }, ms);
  let timer = after(rest);
  const wait = (): void => {
    clearTimeout(timer);
    stop?.();
    timer = after(Math.max(rest, HAND_REST));
  };
  for (const kind of BY_HAND) addEventListener(kind, wait, { passive: true });
  return () => {
    for (const kind of BY_HAND) removeEventListener(kind, wait);
    clearTimeout(timer);
    stop?.();
  };
}

/** Draws over what it has drawn before, as the page does. */
function unseen(options: () => PracticeOptions["drawing"]): (laid: Laid) => void {
  const parts = new Map<string, { readonly group: Element; readonly drawn: readonly DrawnLayer[] }>();
  return (laid) => {
    const { findings, ...others } = options();
    const { parts: next } = drawElevation({ ...laid, findings }, { ...others, findings, moving: true });
    for (const { key, layers } of next) {
      const { group, drawn } = parts.get(key) ?? { group: svgGroup(), drawn: [] };
      parts.set(key, { group, drawn: redraw(group, drawn, layers) });
    }
  };
}

/** The nth of ever other and longer moves of a thing, along its wall and up it by turns. */
function imagined({ parts: [whole] }: Handle, nth: number): readonly PatchOperation[] | undefined {
  const by = (nth % 4 < 2 ? 1 : -1) * (1 + 0.75 * nth);
  return whole?.taken.to(nth % 2 === 0 ? [by, 0] : [0, by], AS_GIVEN).change?.operations;
}

function anOpening(design: Design, document: unknown): Handle | undefined {
  for (const face of design.facade.faces)
    for (const { id } of face.openings) {
      const handle = handleOf(design, document, { kind: "opening", face: face.id, id });
      if (handle) return handle;
    }
  return undefined;
}
