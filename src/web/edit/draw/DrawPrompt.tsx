import { Fragment, useEffect, useId, useRef, useState } from "react";
import { heading } from "../../../scene/views/extent.ts";
import { parseLength, printLength } from "../../../units/feet-inch.ts";
import { useWords } from "../../words.ts";
import { useHelp } from "../help/use-help.tsx";
import { type Extent, isRound, type NewThing, usualExtent } from "./new-thing.ts";
import type { Draw } from "./use-draw.ts";

type Side = keyof Extent;

/**
 * Open at the drawing while something is drawn: its size, to be typed before or during the drawing, and a press that
 * places it where the face has room.
 */
export function DrawPrompt({
  draw,
  thing,
  face,
  onLeave,
}: {
  draw: Draw;
  thing: NewThing;
  /** The face that it goes on when no hand draws it. */
  face: string;
  onLeave: () => void;
}) {
  const { w, reader } = useWords();
  const id = useId();
  const [texts, setTexts] = useState<Partial<Record<Side, string>>>({});
  const sides: readonly Side[] = isRound(thing) ? ["width"] : ["width", "height"];
  const labelOf = (side: Side): string => (isRound(thing) ? w("page.edit.diameter") : w(`page.edit.${side}`));
  const help = {
    width: useHelp(isRound(thing) ? "penetration-diameter" : "opening-width", labelOf("width")),
    height: useHelp("opening-height", labelOf("height")),
  };
  const system = reader.units === "mm" ? "mm" : "in";
  const read = (side: Side): number | "wrong" | undefined => {
    const text = texts[side];
    if (text === undefined || text.trim() === "") return undefined;
    const parsed = parseLength(text, system);
    return parsed.ok && parsed.value > 0 ? parsed.value : "wrong";
  };
  const wrong = sides.some((side) => read(side) === "wrong");
  const usual = (side: Side): string =>
    printLength(usualExtent(thing)[side], {
      display: reader.units,
      denominator: 32,
      decimals: 3,
      decimalSign: reader.language === "fr" ? "," : ".",
    });
  const first = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // A finger draws first: its keyboard would cover the drawing.
    if (matchMedia("(pointer: fine)").matches) first.current?.focus();
    const press = (event: KeyboardEvent): void => {
      if (!/^\d$/.test(event.key) || event.target instanceof HTMLInputElement) return;
      event.stopPropagation();
      first.current?.focus();
    };
    window.addEventListener("keydown", press, { capture: true });
    return () => window.removeEventListener("keydown", press, { capture: true });
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was typed is told as it changes, and as nothing else does
  useEffect(() => {
    const typed: Partial<Record<Side, number>> = {};
    for (const side of sides) {
      const value = read(side);
      if (typeof value === "number") typed[side] = value;
    }
    draw.type(typed);
  }, [texts]);
  return (
    <form
      className="draw-prompt"
      aria-label={w("page.draw.add-thing", { kind: thing })}
      onSubmit={(event) => {
        event.preventDefault();
        if (wrong) return;
        draw.place(face);
        onLeave();
      }}
      onKeyDown={({ key }) => {
        if (key !== "Escape") return;
        draw.begin(undefined);
        onLeave();
      }}
    >
      <p id={`${id}-how`}>{w(isRound(thing) ? "page.draw.how-round" : "page.draw.how")}</p>
      <div className="draw-sizes">
        {sides.map((side, at) => (
          <label key={side}>
            {labelOf(side)}
            <input
              ref={at === 0 ? first : undefined}
              size={7}
              inputMode={reader.units === "mm" ? "decimal" : "text"}
              autoComplete="off"
              placeholder={usual(side)}
              value={texts[side] ?? ""}
              aria-invalid={read(side) === "wrong"}
              aria-describedby={wrong ? `${id}-wrong` : `${id}-how`}
              onChange={({ currentTarget }) => setTexts({ ...texts, [side]: currentTarget.value })}
            />
          </label>
        ))}
        <button type="submit">{w("page.draw.place", { face: heading(face) })}</button>
        <button
          type="button"
          onClick={() => {
            draw.begin(undefined);
            onLeave();
          }}
        >
          {w("page.draw.leave")}
        </button>
        {/* After the sizes for the keys, which go from one to the other; beside them for the eye. */}
        {sides.map((side) => (
          <span key={side} className={`help-of-${side}`}>
            {help[side].button}
          </span>
        ))}
      </div>
      {sides.map((side) => (
        <Fragment key={side}>{help[side].note}</Fragment>
      ))}
      {wrong && (
        <p id={`${id}-wrong`} className="wrong" role="alert">
          {w("page.edit.no-length")}
        </p>
      )}
    </form>
  );
}
