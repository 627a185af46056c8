/** Where on the screen the place of a step lies, while the drawing moves and the page scrolls. */
import { useEffect, useState } from "react";

export interface Place {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Seen {
  readonly place: Place | undefined;
  readonly noteOpen: boolean;
}

/** Between two looks at the page, milliseconds: what is pointed at moves under the reader's hand. */
const LOOK = 100;
const NOWHERE: Seen = { place: undefined, noteOpen: false };

/** The first of some places that the page has, brought into view once; `covered` pixels at the screen's foot are not to be seen. */
export function usePlace(selector: string, covered: () => number): Seen {
  const [seen, setSeen] = useState<Seen>(NOWHERE);
  // biome-ignore lint/correctness/useExhaustiveDependencies: how much is covered is asked when a place is brought into view
  useEffect(() => {
    let brought = false;
    const look = (): void => {
      const element = document.querySelector(selector);
      const box = element?.getBoundingClientRect();
      const place = box && box.width > 0 ? box : undefined;
      if (element && place && !brought) {
        brought = true;
        const free = window.innerHeight - covered();
        const hidden = place.top < 0 || place.bottom > free;
        element.scrollIntoView({ block: hidden ? "start" : "nearest", inline: "nearest" });
      }
      const next: Seen = { place, noteOpen: document.querySelector(".note.open") !== null };
      setSeen((before) => (same(before, next) ? before : next));
    };
    look();
    const looking = setInterval(look, LOOK);
    window.addEventListener("scroll", look, { capture: true, passive: true });
    window.addEventListener("resize", look);
    return () => {
      clearInterval(looking);
      window.removeEventListener("scroll", look, { capture: true });
      window.removeEventListener("resize", look);
    };
  }, [selector]);
  return seen;
}

function same(a: Seen, b: Seen): boolean {
  const [p, q] = [a.place, b.place];
  return (
    a.noteOpen === b.noteOpen &&
    p?.left === q?.left &&
    p?.top === q?.top &&
    p?.width === q?.width &&
    p?.height === q?.height
  );
}
