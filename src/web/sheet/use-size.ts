/** The size of an element as it changes. */
import { type RefObject, useEffect, useState } from "react";
import type { Size } from "../drawing/camera.ts";

/** Told by the browser once it has laid the page out: asking before would lay it out one more time, ahead of its first picture. */
export function useSize(ref: RefObject<HTMLElement | null>): Size | undefined {
  const [size, setSize] = useState<Size>();
  useEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(() => {
      const next = { width: element.clientWidth, height: element.clientHeight };
      setSize((held) => (held?.width === next.width && held.height === next.height ? held : next));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [ref]);
  return size;
}
