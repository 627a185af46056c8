import { useMemo, useState } from "react";
import { chosenOf } from "../../../project/intake/dxf/chosen.ts";
import {
  DRAWING_UNITS,
  type Drawing,
  type DrawingUnit,
  layersOf,
} from "../../../project/intake/dxf/drawing.ts";
import { faceOfLayer } from "../../../project/intake/face/face-of-layer.ts";
import { replaceFace } from "../../../project/intake/face/replace-face.ts";
import type { TakenFace } from "../../../project/intake/face/shape.ts";
import { startFace } from "../../../project/intake/face/start-face.ts";
import { type Taken, tried } from "../../../project/intake/taken.ts";
import { useWords } from "../../words.ts";
import { ChoiceField } from "../fields/ChoiceField.tsx";
import { FacePicture } from "./FacePicture.tsx";
import type { TakeDrawingProps } from "./props.ts";
import { TakenTold } from "./TakenTold.tsx";
import { TakePress } from "./TakePress.tsx";

/** The face that a layer of a drawing gives, in the unit that it is drawn in. */
export function TakeLayer({ drawing, into, onTake }: TakeDrawingProps & { drawing: Drawing }) {
  const { w, reader } = useWords();
  const [layer, setLayer] = useState<string>();
  const [unit, setUnit] = useState<DrawingUnit>();
  const layers = useMemo(() => layersOf(drawing).filter(({ closed }) => closed > 0), [drawing]);
  // The layer with most closed lines, and millimetres, until another is chosen: both are shown, and can be chosen again.
  const said = { layer: layer ?? layers[0]?.name, unit: unit ?? drawing.unit ?? "mm" } as const;
  const { units, language } = reader;
  const result = useMemo(() => {
    const chosen = chosenOf(drawing, {
      unit: said.unit,
      ...(said.layer !== undefined && { layer: said.layer }),
    });
    if (!chosen.ok) return { taken: chosen };
    const face = faceOfLayer(drawing, chosen.choice);
    if (!face.ok) return { taken: face };
    return {
      face: face.face,
      taken: takenAs(face.face, {
        into,
        file: drawing.name,
        display: { units, language },
        findings: face.findings,
      }),
    };
  }, [drawing, said.layer, said.unit, into, units, language]);
  return (
    <>
      {said.layer !== undefined && (
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
      {result.face && <FacePicture face={result.face} />}
      <TakenTold taken={result.taken} />
      <TakePress
        taken={result.taken}
        says={w(into ? "page.intake.replace" : "page.intake.begin")}
        onTake={onTake}
      />
    </>
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
