/** Which layer of a drawing is meant, and in which unit it is drawn: what the reader says, or what the drawing leaves no doubt about. */
import { type Finding, finding } from "../../../findings/finding.ts";
import { message } from "../../../text/message.ts";
import { DRAWING_UNITS, type Drawing, type DrawingUnit, layersOf } from "./drawing.ts";
import "../texts.ts";

export interface LayerChoice {
  readonly layer: string;
  readonly unit: DrawingUnit;
}

export type Chosen =
  | { readonly ok: true; readonly choice: LayerChoice }
  | { readonly ok: false; readonly findings: readonly Finding[] };

export function chosenOf(drawing: Drawing, said: Partial<LayerChoice>): Chosen {
  const closed = layersOf(drawing).filter((one) => one.closed > 0);
  const layer = said.layer ?? (closed.length === 1 ? closed[0]?.name : undefined);
  const unit = said.unit ?? drawing.unit;
  if (layer !== undefined && unit !== undefined) return { ok: true, choice: { layer, unit } };
  const findings: Finding[] = [];
  const refuse = (says: ReturnType<typeof message>, hint: ReturnType<typeof message>): void => {
    findings.push(finding({ code: "F034", outcome: "fail", where: {}, says, hint }));
  };
  const file = drawing.name;
  if (layer === undefined) {
    const layers = closed.map(({ name, closed: count }) =>
      message("intake.layer.named", { layer: name, count }),
    );
    refuse(
      closed.length > 0
        ? message("intake.layer.which", { file, layers })
        : message("intake.drawing.empty", { file }),
      message("intake.hint.layer"),
    );
  }
  if (unit === undefined) {
    refuse(
      message("intake.unit.unknown", { file }),
      message("intake.hint.unit", { units: [...DRAWING_UNITS] }),
    );
  }
  return { ok: false, findings };
}
