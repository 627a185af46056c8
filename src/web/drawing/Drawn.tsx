import { memo, useEffect, useRef } from "react";

/** The renderer's elements; what is picked and what is marked gets its class without drawing anew. */
export const Drawn = memo(function Drawn({
  markup,
  picked,
  transform,
}: {
  markup: string;
  /** Ids and marks of what is drawn in pencil red. */
  picked: readonly string[];
  transform?: string;
}) {
  const group = useRef<SVGGElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: new markup has lost the classes
  useEffect(() => {
    const found = picked.flatMap((id) => [
      ...(group.current?.querySelectorAll(`[data-of="${CSS.escape(id)}"]`) ?? []),
    ]);
    for (const element of found) element.classList.add("picked");
    return () => {
      for (const element of found) element.classList.remove("picked");
    };
  }, [markup, picked]);
  return (
    // biome-ignore lint/security/noDangerouslySetInnerHtml: our own renderer's markup, its texts escaped there
    <g ref={group} transform={transform} dangerouslySetInnerHTML={{ __html: markup }} />
  );
});
