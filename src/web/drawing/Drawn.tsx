import { memo, useLayoutEffect, useRef } from "react";
import type { LayerElements } from "../../output/svg/marks.ts";
import { type DrawnLayer, redraw } from "./redraw.ts";

/** The renderer's elements; what is picked and what is marked gets its class without drawing anew. */
export const Drawn = memo(function Drawn({
  layers,
  picked,
  transform,
}: {
  layers: readonly LayerElements[];
  /** Ids and marks of what is drawn in pencil red. */
  picked: readonly string[];
  transform?: string;
}) {
  const group = useRef<SVGGElement>(null);
  const drawn = useRef<readonly DrawnLayer[]>([]);
  useLayoutEffect(() => {
    if (group.current) drawn.current = redraw(group.current, drawn.current, layers);
  }, [layers]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is drawn anew has no class yet
  useLayoutEffect(() => {
    const host = group.current;
    if (!host) return;
    const found = new Set(
      picked.flatMap((id) => [...host.querySelectorAll(`[data-of="${CSS.escape(id)}"]`)]),
    );
    for (const element of host.querySelectorAll(".picked"))
      if (!found.has(element)) element.classList.remove("picked");
    for (const element of found) element.classList.add("picked");
  }, [layers, picked]);
  return <g ref={group} transform={transform} />;
});
