/** The view of the elevation, moved by hand, wheel, fingers and keys. */
import {
  type KeyboardEvent,
  type PointerEvent,
  type RefObject,
  useCallback,
  useEffect,
  useRef,
  useState,
} from "react";
import { type Camera, clampZoom, panBy, type Size, zoomAbout } from "./camera.ts";
import type { Elevation } from "./elevation.ts";
import { createFollower, type Follower, RAW_MOVES } from "./follower.ts";

export interface ViewHandlers {
  onPointerDown(event: PointerEvent<HTMLElement>): void;
  onPointerMove(event: PointerEvent<HTMLElement>): void;
  onPointerUp(event: PointerEvent<HTMLElement>): void;
  onPointerCancel(event: PointerEvent<HTMLElement>): void;
  onKeyDown(event: KeyboardEvent<HTMLElement>): void;
}

export interface ViewOptions {
  readonly host: RefObject<HTMLElement | null>;
  /** On the drawing that is shown. */
  readonly elevation: Elevation | undefined;
  readonly start: Camera | undefined;
  readonly homeK: number;
  readonly size: Size;
  /** A tap or click that moved nothing: pixels from the middle of the view, by finger or not, with Shift or not. */
  onTap(at: readonly [number, number], how: { readonly touch: boolean; readonly shift: boolean }): void;
  onEscape(): void;
  /** Whether what lies under a press (pixels from the middle) is taken hold of, rather than the view. */
  onGrab?(at: readonly [number, number], touch: boolean): Hold | undefined;
  /** A key that the view does not know, or one with Alt held; true where it was used. */
  onKey?(event: KeyboardEvent<HTMLElement>): boolean;
}

/** Something of the drawing in the hand. */
export interface Hold {
  /** Pixels from where it was taken; `free` where lines must not draw it. */
  move(by: readonly [number, number], free: boolean): void;
  drop(): void;
  cancel(): void;
}

/** A hand that moved less than this meant to press, pixels. */
const STILL = 5;
const KEY_PAN = 60;
const KEY_ZOOM = 1.25;

export function useView({
  host,
  elevation,
  start,
  homeK,
  size,
  onTap,
  onEscape,
  onGrab,
  onKey,
}: ViewOptions): {
  camera: Camera | undefined;
  setCamera: (camera: Camera | undefined) => void;
  zoom: (factor: number) => void;
  handlers: ViewHandlers;
} {
  const [moved, setCamera] = useState<Camera>();
  const camera = moved ?? start;
  const pointers = useRef(new Map<number, readonly [number, number]>());
  const travelled = useRef(0);
  /** Where the drawing stands while it is pressed: to ask in each move would lay the page out each time. */
  const pressedAt = useRef<DOMRect>(undefined);
  const hold = useRef<{ readonly by: Hold; readonly from: readonly [number, number] }>(undefined);

  const change = useCallback(
    (next: (elevation: Elevation, camera: Camera) => Camera): void => {
      if (!elevation || !start) return;
      setCamera((held) => next(elevation, held ?? start));
    },
    [elevation, start],
  );
  const zoom = useCallback(
    (factor: number, at: readonly [number, number] = [0, 0]): void =>
      change((drawn, held) => zoomAbout(drawn, held, { k: clampZoom(held.k * factor, homeK), at })),
    [change, homeK],
  );

  const fromMiddle = ({
    clientX,
    clientY,
  }: {
    clientX: number;
    clientY: number;
  }): readonly [number, number] => {
    const box = pressedAt.current ?? host.current?.getBoundingClientRect();
    return [clientX - (box?.left ?? 0) - size.width / 2, clientY - (box?.top ?? 0) - size.height / 2];
  };

  const follower = useRef<Follower<readonly [x: number, y: number, free: boolean]>>(undefined);
  follower.current ??= createFollower(([x, y, free]) => {
    const { by, from } = hold.current ?? {};
    if (by && from) by.move([x - from[0], y - from[1]], free);
  });
  const followed = (event: globalThis.PointerEvent | PointerEvent<HTMLElement>): void => {
    const before = pointers.current.get(event.pointerId);
    if (!before || !hold.current) return;
    const now = fromMiddle(event);
    const way = Math.hypot(now[0] - before[0], now[1] - before[1]);
    // A frame tells once more what was heard as it came.
    if (way === 0) return;
    travelled.current += way;
    pointers.current.set(event.pointerId, now);
    if (travelled.current > STILL) follower.current?.to([...now, event.altKey]);
  };
  const heard = useRef(followed);
  heard.current = followed;
  useEffect(() => {
    const element = host.current;
    if (!element) return;
    const hear = (event: Event): void => heard.current(event as globalThis.PointerEvent);
    element.addEventListener(RAW_MOVES, hear);
    return () => element.removeEventListener(RAW_MOVES, hear);
  }, [host]);

  useEffect(() => {
    const element = host.current;
    if (!element) return;
    // React listens to wheels passively, and the page must not scroll under the drawing.
    const turn = (event: WheelEvent): void => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const at = [
        event.clientX - box.left - box.width / 2,
        event.clientY - box.top - box.height / 2,
      ] as const;
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 24 : 1;
      zoom(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0016)), at);
    };
    element.addEventListener("wheel", turn, { passive: false });
    return () => element.removeEventListener("wheel", turn);
  }, [host, zoom]);

  const release = (event: PointerEvent<HTMLElement>): void => {
    pointers.current.delete(event.pointerId);
    if (pointers.current.size === 0) pressedAt.current = undefined;
  };
  const letGo = (how: "drop" | "cancel"): void => {
    if (how === "drop") follower.current?.finish();
    else follower.current?.drop();
    const held = hold.current;
    hold.current = undefined;
    held?.by[how]();
  };
  const handlers: ViewHandlers = {
    onPointerDown(event) {
      if (event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      pressedAt.current ??= event.currentTarget.getBoundingClientRect();
      const at = fromMiddle(event);
      if (pointers.current.size === 0) {
        travelled.current = 0;
        const grabbed = onGrab?.(at, event.pointerType === "touch");
        hold.current = grabbed && { by: grabbed, from: at };
      } else letGo("cancel");
      pointers.current.set(event.pointerId, at);
    },
    onPointerMove(event) {
      if (hold.current) {
        followed(event);
        return;
      }
      const before = pointers.current.get(event.pointerId);
      if (!before) return;
      const now = fromMiddle(event);
      const [dx, dy] = [now[0] - before[0], now[1] - before[1]];
      travelled.current += Math.hypot(dx, dy);
      const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1];
      pointers.current.set(event.pointerId, now);
      if (other) {
        const spread = (at: readonly [number, number]): number =>
          Math.hypot(at[0] - other[0], at[1] - other[1]);
        const factor = spread(now) / Math.max(spread(before), 1);
        const at = [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2] as const;
        zoom(factor, at);
        change((drawn, held) => panBy(drawn, held, { dx: dx / 2, dy: dy / 2 }));
      } else if (travelled.current > STILL) change((drawn, held) => panBy(drawn, held, { dx, dy }));
    },
    onPointerUp(event) {
      const alone = pointers.current.size === 1 && pointers.current.has(event.pointerId);
      release(event);
      letGo(travelled.current > STILL ? "drop" : "cancel");
      if (alone && travelled.current <= STILL) {
        onTap(fromMiddle(event), { touch: event.pointerType === "touch", shift: event.shiftKey });
      }
    },
    onPointerCancel(event) {
      release(event);
      letGo("cancel");
    },
    onKeyDown(event) {
      if (onKey?.(event)) {
        event.preventDefault();
        return;
      }
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const act = KEYS[event.key];
      if (event.key === "Escape" && hold.current) letGo("cancel");
      else if (event.key === "Escape") onEscape();
      else if (event.key === "0") setCamera(undefined);
      else if (event.key === "+" || event.key === "=") zoom(KEY_ZOOM);
      else if (event.key === "-") zoom(1 / KEY_ZOOM);
      else if (act) change((drawn, held) => panBy(drawn, held, act));
      else return;
      event.preventDefault();
    },
  };
  return { camera, setCamera, zoom, handlers };
}

/** The view goes where the arrow points, so the drawing goes the other way. */
const KEYS: Readonly<Record<string, { dx: number; dy: number } | undefined>> = {
  ArrowLeft: { dx: KEY_PAN, dy: 0 },
  ArrowRight: { dx: -KEY_PAN, dy: 0 },
  ArrowUp: { dx: 0, dy: KEY_PAN },
  ArrowDown: { dx: 0, dy: -KEY_PAN },
};
