import "./texts.ts";
import "./walk.css";
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import { leadOpening, type Pick } from "../picks/pick.ts";
import type { Part } from "../sheet/parts.ts";
import { useSize } from "../sheet/use-size.ts";
import { useWords } from "../words.ts";
import { beside } from "./beside.ts";
import { type Step, stepsOf, type Walked } from "./steps.ts";
import { type Place, usePlace } from "./use-place.ts";

export interface WalkProps {
  readonly design: Design;
  readonly part: Part;
  readonly pick: Pick | undefined;
  readonly edits: number;
  onPart(part: Part): void;
  onLeave(): void;
}

/** Where the sheet is one column; as in the style sheet. */
const NARROW = "(max-width: 60rem)";
/** A place has this much room inside its outline, pixels. */
const ROOM = 4;

/** The walk round the sheet: a few words at each place, which is outlined and stays in use. */
export function Walk({ design, part, pick, edits, onPart, onLeave }: WalkProps) {
  const { w } = useWords();
  // It goes on about the opening that it began with, whatever becomes of that.
  const [lead] = useState(() => leadOpening(design));
  const steps = useMemo(() => stepsOf(lead), [lead]);
  const [at, setAt] = useState(0);
  const step = steps[at] as Step;
  const words = useRef<HTMLElement>(null);
  const next = useRef<HTMLButtonElement>(null);
  const size = useSize(words);
  const there = step.part === part;
  const { place, noteOpen } = usePlace(
    there ? step.place : `[data-part="${step.part}"]`,
    () => words.current?.offsetHeight ?? 0,
  );
  const pressed = usePressed();
  const now: Walked = { part, pick, edits, noteOpen };
  const atStart = useRef<Walked>(now);

  const goTo = (index: number): void => {
    if (index >= steps.length) {
      onLeave();
      return;
    }
    atStart.current = now;
    setAt(index);
    const target = steps[index] as Step;
    // The first steps show what the sheet opens with; a part of the job is the reader's to press.
    if (target.part === "setting-out") onPart(target.part);
  };

  const done = step.done?.(now, atStart.current) === true && !pressed;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a step is done once
  useEffect(() => {
    if (done) goTo(at + 1);
  }, [done]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a part that was pressed has its own step, and another file none
  useEffect(() => {
    const own = steps.findIndex((one) => one.part === part);
    if (part !== step.part && own > at) goTo(own);
  }, [part]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it begins once, at its first step
  useEffect(() => {
    next.current?.focus({ preventScroll: true });
    goTo(0);
  }, []);
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.key !== "Escape" || (event.target as Element | null)?.closest("dialog")) return;
      event.stopPropagation();
      onLeave();
    };
    window.addEventListener("keydown", press, { capture: true });
    return () => window.removeEventListener("keydown", press, { capture: true });
  }, [onLeave]);

  const [corner, setCorner] = useState<{ left: number; top: number }>();
  useLayoutEffect(() => {
    if (!size) return;
    const window = { width: innerWidth, height: innerHeight };
    const clear =
      place && step.clearOf ? document.querySelector(step.clearOf)?.getBoundingClientRect() : undefined;
    // On a narrow screen the style sheet puts them along its foot.
    setCorner(matchMedia(NARROW).matches ? undefined : beside(clear ?? place, { words: size, window }));
  }, [place, size, step.clearOf]);

  const last = at === steps.length - 1;
  return (
    <>
      {place && <Outline place={place} />}
      <section ref={words} className="walk" aria-label={w("page.walk")} style={corner}>
        <p className="sub">{w("page.walk.of", { step: at + 1, steps: steps.length })}</p>
        <p aria-live="polite">
          {w(`page.walk.${step.name}`, {
            id: lead && lead.kind !== "face" ? lead.id : "",
            part: w(`page.part.${step.part}`),
            undo: w("page.edit.undo"),
            save: w("page.edit.save"),
          })}
        </p>
        <p className="walk-ways">
          <button type="button" onClick={onLeave}>
            {w("page.walk.leave")}
          </button>
          <button type="button" disabled={at === 0} onClick={() => goTo(at - 1)}>
            {w("page.walk.back")}
          </button>
          <button ref={next} type="button" className="walk-next" onClick={() => goTo(at + 1)}>
            {w(last ? "page.walk.finish" : "page.walk.next")}
          </button>
        </p>
      </section>
    </>
  );
}

function Outline({ place }: { place: Place }) {
  return (
    <div
      className="walk-outline"
      aria-hidden="true"
      style={{
        left: place.left - ROOM,
        top: place.top - ROOM,
        width: place.width + 2 * ROOM,
        height: place.height + 2 * ROOM,
      }}
    />
  );
}

/** Whether a pointer is down: a drag is over when it is let go of. */
function usePressed(): boolean {
  const [pressed, setPressed] = useState(false);
  useEffect(() => {
    const down = (): void => setPressed(true);
    const up = (): void => setPressed(false);
    window.addEventListener("pointerdown", down, { capture: true });
    window.addEventListener("pointerup", up, { capture: true });
    window.addEventListener("pointercancel", up, { capture: true });
    return () => {
      window.removeEventListener("pointerdown", down, { capture: true });
      window.removeEventListener("pointerup", up, { capture: true });
      window.removeEventListener("pointercancel", up, { capture: true });
    };
  }, []);
  return pressed;
}
