import "../../../project/intake/texts.ts";
import "./intake.css";
import { useId, useMemo, useState } from "react";
import type { Source } from "../../../project/editing/change.ts";
import { chosenOf } from "../../../project/intake/dxf/chosen.ts";
import { DRAWING_UNITS, type DrawingUnit, layersOf } from "../../../project/intake/dxf/drawing.ts";
import { type ReadDrawing, readDrawing } from "../../../project/intake/dxf/read-drawing.ts";
import { faceOfLayer } from "../../../project/intake/face/face-of-layer.ts";
import { replaceFace } from "../../../project/intake/face/replace-face.ts";
import type { TakenFace } from "../../../project/intake/face/shape.ts";
import { startFace } from "../../../project/intake/face/start-face.ts";
import { type Taken, tried } from "../../../project/intake/taken.ts";
import { useWords } from "../../words.ts";
import { ChoiceField } from "../fields/ChoiceField.tsx";
import { useHelp } from "../help/use-help.tsx";
import { FacePicture } from "./FacePicture.tsx";
import { TakenTold } from "./TakenTold.tsx";
import { textOf } from "./text-of.ts";

export interface TakeDrawingProps {
  /** The face that gets the drawing; a project is begun with it where absent. */
  readonly into?: { readonly source: Source; readonly face: string } | undefined;
  /** Takes what is shown, once it is pressed. */
  onTake(taken: Extract<Taken, { ok: true }>): void;
}

/** A drawing chosen from disk: its layer and unit, the face that they give, and all that would be otherwise, before it is taken. */
export function TakeDrawing({ into, onTake }: TakeDrawingProps) {
  const { w, reader } = useWords();
  const id = useId();
  const help = useHelp("drawing-file", w("page.intake.drawing"));
  const [read, setRead] = useState<ReadDrawing>();
  const [layer, setLayer] = useState<string>();
  const [unit, setUnit] = useState<DrawingUnit>();
  const drawing = read?.ok ? read.drawing : undefined;
  const layers = useMemo(
    () => (drawing ? layersOf(drawing).filter(({ closed }) => closed > 0) : []),
    [drawing],
  );
  // The layer with most closed lines, and millimetres, until another is chosen: both are shown, and can be chosen again.
  const said = { layer: layer ?? layers[0]?.name, unit: unit ?? drawing?.unit ?? "mm" } as const;
  const { units, language } = reader;
  const result = useMemo(() => {
    if (!read) return undefined;
    if (!read.ok) return { taken: read };
    const chosen = chosenOf(read.drawing, {
      unit: said.unit,
      ...(said.layer !== undefined && { layer: said.layer }),
    });
    if (!chosen.ok) return { taken: chosen };
    const face = faceOfLayer(read.drawing, chosen.choice);
    if (!face.ok) return { taken: face };
    return {
      face: face.face,
      taken: takenAs(face.face, {
        into,
        file: read.drawing.name,
        display: { units, language },
        findings: face.findings,
      }),
    };
  }, [read, said.layer, said.unit, into, units, language]);
  const choose = (file: File | undefined): void => {
    if (!file) return;
    setLayer(undefined);
    setUnit(undefined);
    void textOf(file).then((text) => setRead(readDrawing(text, file.name)));
  };
  return (
    <section className="intake" aria-label={w("page.intake.what")}>
      <div className="length-field intake-whole">
        <p className="field-head">
          <label htmlFor={id}>{w("page.intake.drawing")}</label>
          {help.button}
        </p>
        <input
          id={id}
          type="file"
          accept=".dxf"
          onChange={({ currentTarget }) => choose(currentTarget.files?.[0])}
        />
      </div>
      {help.note}
      {drawing && said.layer !== undefined && (
        <>
          <ChoiceField
            label={w("page.intake.layer")}
            help="drawing-layer"
            value={said.layer}
            choices={layers.map(({ name, closed }) => ({
              value: name,
              text: w("intake.layer.named", { layer: name, count: closed }),
            }))}
            onChoose={setLayer}
          />
          <ChoiceField
            label={w("page.intake.unit")}
            help="drawing-unit"
            value={said.unit}
            choices={DRAWING_UNITS.map((value) => ({ value, text: value }))}
            onChoose={setUnit}
          />
        </>
      )}
      {result?.face && <FacePicture face={result.face} />}
      {result && <TakenTold taken={result.taken} />}
      {result && (
        <p className="edit-words">
          <button
            type="button"
            disabled={!result.taken.ok}
            onClick={() => result.taken.ok && onTake(result.taken as Extract<Taken, { ok: true }>)}
          >
            {w(into ? "page.intake.replace" : "page.intake.begin")}
          </button>
        </p>
      )}
    </section>
  );
}

function takenAs(
  face: TakenFace,
  {
    into,
    file,
    display,
    findings,
  }: Pick<TakeDrawingProps, "into"> & {
    readonly file: string;
    readonly display: Parameters<typeof startFace>[1]["display"];
    readonly findings: Taken["findings"];
  },
): Taken {
  if (!into) {
    const started = startFace(face, { title: file.replace(/\.dxf$/i, ""), display, file });
    return started.ok ? { ...started, findings } : started;
  }
  const replaced = replaceFace(into.source, { id: into.face, taken: face, file });
  return replaced.ok
    ? tried({ document: into.source.document, name: file }, { ...replaced, findings })
    : replaced;
}
