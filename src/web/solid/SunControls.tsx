/** The sun's day and hour, slid or typed, and where it then stands. */
import { type ReactNode, useId, useState } from "react";
import { useWords } from "../words.ts";
import type { Moment, Sun } from "./sun.ts";

export interface SunControlsProps {
  readonly moment: Moment;
  readonly sun: Sun;
  onMoment(moment: Moment): void;
}

const DAYS = [1, 365] as const;
const HOURS = [0, 24] as const;

export function SunControls({ moment, sun, onMoment }: SunControlsProps) {
  const { reader, w } = useWords();
  const day = new Intl.DateTimeFormat(reader.language, { day: "numeric", month: "long", timeZone: "UTC" });
  const date = day.format(Date.UTC(2025, 0, moment.dayOfYear));
  return (
    <fieldset className="sun-controls">
      <legend className="unseen">{w("page.sun")}</legend>
      <SunField
        label={w("page.sun.day")}
        value={moment.dayOfYear}
        range={DAYS}
        step={1}
        wrong={(value) => w("page.sun.wrong-day", { value })}
        onValue={(dayOfYear) => onMoment({ ...moment, dayOfYear })}
      />
      <SunField
        label={w("page.sun.hour")}
        value={moment.hour}
        range={HOURS}
        step={0.25}
        wrong={(value) => w("page.sun.wrong-hour", { value })}
        onValue={(hour) => onMoment({ ...moment, hour })}
      />
      <p aria-live="polite">
        {sun.elevationDeg > 0
          ? w("page.sun.stands", { date, elevation: sun.elevationDeg, azimuth: sun.azimuthDeg })
          : w("page.sun.below", { date })}
      </p>
    </fieldset>
  );
}

interface SunFieldProps {
  readonly label: string;
  readonly value: number;
  readonly range: readonly [least: number, most: number];
  /** Of the slider, and what whole numbers are of what is typed where it is 1. */
  readonly step: number;
  wrong(value: string): string;
  onValue(value: number): void;
}

function SunField({ label, value, range: [least, most], step, wrong, onValue }: SunFieldProps): ReactNode {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const read = (text: string): number | undefined => {
    const number = text.trim() === "" ? Number.NaN : Number(text.replace(",", "."));
    const whole = step !== 1 || Number.isInteger(number);
    return whole && number >= least && number <= most ? number : undefined;
  };
  const refused = typed !== undefined && read(typed) === undefined;
  return (
    <span className="sun-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        value={typed ?? String(value)}
        aria-invalid={refused}
        aria-describedby={refused ? `${id}-wrong` : undefined}
        onChange={({ target }) => {
          setTyped(target.value);
          const number = read(target.value);
          if (number !== undefined) onValue(number);
        }}
        onBlur={() => {
          if (!refused) setTyped(undefined);
        }}
      />
      <input
        type="range"
        aria-label={label}
        min={least}
        max={most}
        step={step}
        value={value}
        onChange={({ target }) => {
          setTyped(undefined);
          onValue(Number(target.value));
        }}
      />
      {refused && (
        <span id={`${id}-wrong`} className="wrong">
          {wrong(typed)}
        </span>
      )}
    </span>
  );
}
