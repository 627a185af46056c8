/** A number that is another one each time the page's light changes, by the reader's choice or the system's. */
import { useEffect, useState } from "react";

export function useInks(): number {
  const [changes, setChanges] = useState(0);
  useEffect(() => {
    const tell = (): void => setChanges((before) => before + 1);
    const chosen = new MutationObserver(tell);
    chosen.observe(document.documentElement, { attributes: true, attributeFilter: ["data-light"] });
    const system = matchMedia("(prefers-color-scheme: dark)");
    system.addEventListener("change", tell);
    return () => {
      chosen.disconnect();
      system.removeEventListener("change", tell);
    };
  }, []);
  return changes;
}
