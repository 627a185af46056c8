/** The view of the building turned, moved and brought nearer by hand, wheel, fingers and keys. */
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from "react";
import { moved, nearer, type Orbit, turned } from "./orbit.ts";

export interface OrbitOptions {
  readonly host: RefObject<HTMLElement | null>;
  onChange(change: (orbit: Orbit) => Orbit): void;
  /** A press that moved nothing, pixels from the middle of the view. */
  onTap(at: readonly [number, number]): void;
  onEscape(): void;
  onHome(): void;
}

type Spot = readonly [x: number, y: number];

/** A hand that moved less than this meant to press, pixels. */
const STILL = 5;
/** Pixels that an arrow stands for: about 15°. */
const KEY_STEP = 37.5;
const KEY_ZOOM = 1.25;

export function useOrbit({ host, onChange, onTap, onEscape, onHome }: OrbitOptions) {
  const pointers = useRef(new Map<number, Spot>());
  const travelled = useRef(0);
  const change = useRef(onChange);
  change.current = onChange;

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    // React listens to wheels passively, and the page must not scroll under the drawing.
    const turn = (event: WheelEvent): void => {
      event.preventDefault();
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 24 : 1;
      const factor = Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0016));
      const at = fromMiddle(element, event);
      change.current((orbit) => nearer(orbit, factor, at));
    };
    element.addEventListener("wheel", turn, { passive: false });
    return () => element.removeEventListener("wheel", turn);
  }, [host]);

  return {
    onPointerDown(event: PointerEvent<HTMLElement>) {
      if (event.button > 2) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      if (pointers.current.size === 0) travelled.current = 0;
      pointers.current.set(event.pointerId, fromMiddle(event.currentTarget, event));
    },
    onPointerMove(event: PointerEvent<HTMLElement>) {
      const before = pointers.current.get(event.pointerId);
      if (!before) return;
      const now = fromMiddle(event.currentTarget, event);
      const by = { dx: now[0] - before[0], dy: now[1] - before[1] };
      travelled.current += Math.hypot(by.dx, by.dy);
      const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1];
      pointers.current.set(event.pointerId, now);
      if (other) {
        const factor = apart(now, other) / Math.max(apart(before, other), 1);
        const at = [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2] as const;
        onChange((orbit) => moved(nearer(orbit, factor, at), { dx: by.dx / 2, dy: by.dy / 2 }));
      } else if (travelled.current > STILL) {
        const slides = event.shiftKey || (event.buttons & 1) === 0;
        onChange((orbit) => (slides ? moved : turned)(orbit, by));
      }
    },
    onPointerUp(event: PointerEvent<HTMLElement>) {
      const alone = pointers.current.size === 1 && pointers.current.delete(event.pointerId);
      pointers.current.delete(event.pointerId);
      if (alone && event.button === 0 && travelled.current <= STILL)
        onTap(fromMiddle(event.currentTarget, event));
    },
    onPointerCancel(event: PointerEvent<HTMLElement>) {
      pointers.current.delete(event.pointerId);
    },
    onContextMenu(event: { preventDefault(): void }) {
      event.preventDefault();
    },
    onKeyDown(event: KeyboardEvent<HTMLElement>) {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const way = KEYS[event.key];
      const act = event.shiftKey ? moved : turned;
      if (event.key === "Escape") onEscape();
      else if (event.key === "0") onHome();
      else if (event.key === "+" || event.key === "=") onChange((orbit) => nearer(orbit, KEY_ZOOM));
      else if (event.key === "-") onChange((orbit) => nearer(orbit, 1 / KEY_ZOOM));
      else if (way) onChange((orbit) => act(orbit, way));
      else return;
      event.preventDefault();
    },
  };
}

/** The eye goes where the arrow points, so the building goes the other way. */
const KEYS: Readonly<Record<string, { dx: number; dy: number } | undefined>> = {
  ArrowLeft: { dx: KEY_STEP, dy: 0 },
  ArrowRight: { dx: -KEY_STEP, dy: 0 },
  ArrowUp: { dx: 0, dy: KEY_STEP },
  ArrowDown: { dx: 0, dy: -KEY_STEP },
};

function apart(a: Spot, b: Spot): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

function fromMiddle(element: HTMLElement, { clientX, clientY }: { clientX: number; clientY: number }): Spot {
  const box = element.getBoundingClientRect();
  return [clientX - box.left - box.width / 2, clientY - box.top - box.height / 2];
}
