import { type FormEvent, useState } from "react";
import { heading } from "../../../scene/views/extent.ts";
import { crossingsOf } from "../../../site/survey/crossings.ts";
import { useWords } from "../../words.ts";
import { FacePicture } from "../FacePicture.tsx";
import { LengthInput } from "../LengthInput.tsx";
import type { Site } from "../use-site.ts";

/** Readings of a face, typed in at its crossings one after another. */
export function SurveyView({ site, face }: { site: Site; face: string }) {
  const { w } = useWords();
  const design = site.held?.design;
  const layout = design?.facade.faces.find(({ id }) => id === face);
  const crossings = design && layout ? crossingsOf(design, face) : [];
  const readings = site.state.readings.filter(({ place }) => place.face === face);
  const readAt = (x: number, y: number): readonly number[] =>
    readings.filter(({ place }) => place.x === x && place.y === y).map(({ body }) => body.outward);
  const [at, setAt] = useState(() =>
    Math.max(
      0,
      crossings.findIndex(({ x, y }) => readAt(x, y).length === 0),
    ),
  );
  const [outward, setOutward] = useState<number>();
  const [isKept, setKept] = useState(true);
  const here = crossings[at];
  if (!layout || !here) {
    return (
      <p className="warn" role="alert">
        {w("page.site.no-crossings", { face })}
      </p>
    );
  }
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (outward === undefined) return;
    const told = await site.tell({
      kind: "reading",
      place: { face, piece: here.batten, x: here.x, y: here.y },
      body: { outward },
    });
    setKept(told);
    if (!told) return;
    setOutward(undefined);
    setAt(Math.min(at + 1, crossings.length - 1));
  };
  const before = readAt(here.x, here.y);
  return (
    <>
      <h2>{w("page.site.survey", { face: heading(face) })}</h2>
      <p className="sub">{w("page.site.survey-how")}</p>
      <FacePicture face={layout} here={[here.batten]} spot={here} />
      <p role="status">
        {w("page.site.crossing", {
          number: at + 1,
          of: crossings.length,
          mark: here.batten,
          x: here.x,
          y: here.y,
        })}
      </p>
      {before.length > 0 && <p>{w("page.site.read-before", { outward: before })}</p>}
      <form onSubmit={(event) => void keep(event)}>
        <LengthInput key={at} label={w("page.site.outward")} value={outward} onChange={setOutward} />
        <button type="submit" className="main">
          {w("page.site.keep-next")}
        </button>
      </form>
      <div className="pair">
        <button type="button" disabled={at === 0} onClick={() => setAt(at - 1)}>
          {w("page.site.previous")}
        </button>
        <button type="button" disabled={at === crossings.length - 1} onClick={() => setAt(at + 1)}>
          {w("page.site.next")}
        </button>
      </div>
      {!isKept && (
        <p className="warn" role="alert">
          {w("page.site.not-kept")}
        </p>
      )}
      <p className="sub">{w("drawing.method.caution")}</p>
    </>
  );
}
