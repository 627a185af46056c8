import { useId, useState } from "react";
import type { Point } from "../../geometry/point.ts";
import { type Run, readRun } from "../../project/editing/run.ts";
import { tellRun } from "../../project/editing/run-drawn.ts";
import { startWalls, wallId } from "../../project/editing/start.ts";
import { printProject } from "../../project/print.ts";
import { heading } from "../../scene/views/extent.ts";
import { sayLength } from "../../text/say.ts";
import { useWords } from "../words.ts";
import { degreesIn } from "./fields/degrees.ts";
import { LengthField } from "./fields/LengthField.tsx";
import { useHelp } from "./help/use-help.tsx";
import { PlanPicture } from "./PlanPicture.tsx";

/** A wall is so high until it is told (mm). */
const USUAL_HEIGHT = 2550;

/** Where no file is on the sheet: a run of walls by lengths and turns, each with its height. */
export function StartPlan({ onOpen }: { onOpen: (file: File) => void }) {
  const { w, s, reader } = useWords();
  const id = useId();
  const [typed, setTyped] = useState("");
  const [facing, setFacing] = useState("180");
  const [heights, setHeights] = useState<readonly (number | undefined)[]>([]);
  const runHelp = useHelp("plan-run", w("page.plan.run"));
  const facingHelp = useHelp("face-azimuth", w("page.plan.facing"));
  const unit = reader.units === "mm" ? "mm" : "in";
  const read = readRun(typed, unit);
  const wrong = typed.trim() !== "" && !read.ok;
  const azimuthDeg = degreesIn(facing);
  const run = read.ok ? read.run : undefined;
  // A wall goes on as high as the one before it until it is told.
  const high: number[] = [];
  for (const [i] of (run?.walls ?? []).entries()) high.push(heights[i] ?? high[i - 1] ?? USUAL_HEIGHT);
  /** What a hand draws is told in the field; walls that could not stand are not drawn. */
  const draw = (points: readonly Point[]): void => {
    const told = tellRun(points, reader);
    if (readRun(told, unit).ok) setTyped(told);
  };
  const start = (of: Run, lookingTo: number): void => {
    const { units, language } = reader;
    const walls = startWalls({
      title: w("page.plan.title"),
      run: of,
      heights: high,
      azimuthDeg: lookingTo,
      display: { units, language },
    });
    onOpen(new File([printProject(walls)], "walls.outerleaf.json", { type: "application/json" }));
  };
  return (
    <form className="place-fields" aria-label={w("page.plan")} onSubmit={(event) => event.preventDefault()}>
      <div className="length-field plan-run">
        <p className="field-head">
          <label htmlFor={id}>{w("page.plan.run")}</label>
          {runHelp.button}
        </p>
        <textarea
          id={id}
          rows={2}
          autoComplete="off"
          spellCheck={false}
          placeholder={w("page.plan.example")}
          value={typed}
          aria-invalid={wrong}
          aria-describedby={wrong ? `${id}-wrong` : undefined}
          onChange={({ currentTarget }) => setTyped(currentTarget.value)}
        />
        {wrong && (
          <span id={`${id}-wrong`} className="wrong" role="alert">
            {s(read.says)}
          </span>
        )}
      </div>
      {runHelp.note}
      <PlanPicture run={run} azimuthDeg={azimuthDeg} onDrawn={wrong ? undefined : draw} />
      <p className="edit-words">
        <button
          type="button"
          disabled={!run}
          onClick={() =>
            run && setTyped(run.walls.length > 1 ? tellRun(run.points.slice(0, -1), reader) : "")
          }
        >
          {w("page.plan.shorter")}
        </button>
      </p>
      <div className="length-field plan-run">
        <p className="field-head">
          <label htmlFor={`${id}-facing`}>{w("page.plan.facing")}</label>
          {facingHelp.button}
        </p>
        <input
          id={`${id}-facing`}
          inputMode="decimal"
          autoComplete="off"
          value={facing}
          aria-invalid={azimuthDeg === undefined}
          aria-describedby={azimuthDeg === undefined ? `${id}-no-facing` : undefined}
          onChange={({ currentTarget }) => setFacing(currentTarget.value)}
        />
        {azimuthDeg === undefined && (
          <span id={`${id}-no-facing`} className="wrong" role="alert">
            {w("page.edit.no-azimuth")}
          </span>
        )}
      </div>
      {facingHelp.note}
      {run?.walls.map(({ length }, i) => (
        <LengthField
          key={wallId(i)}
          label={w("page.plan.height", { wall: heading(wallId(i)), length: sayLength(length, reader) })}
          help="face-height"
          value={high[i] as number}
          least={1}
          onChange={(mm) => setHeights(Object.assign([...heights], { [i]: mm }))}
        />
      ))}
      <p className="edit-words">
        <button
          type="button"
          disabled={!run || azimuthDeg === undefined}
          onClick={() => run && azimuthDeg !== undefined && start(run, azimuthDeg)}
        >
          {w("page.plan")}
        </button>
      </p>
    </form>
  );
}
