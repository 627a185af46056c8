/** The size of an element as it changes. */
import { type RefObject, useLayoutEffect, useState } from "react";
import type { Size } from "../drawing/camera.ts";

export function useSize(ref: RefObject<HTMLElement | null>): Size | undefined {
  const [size, setSize] = useState<Size>();
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const look = (): void => {
      const next = { width: element.clientWidth, height: element.clientHeight };
      setSize((held) => (held?.width === next.width && held.height === next.height ? held : next));
    };
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
}
