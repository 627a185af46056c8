/** The face that a layer of a drawing holds: its largest closed line, and as openings the closed lines within it. */
import { type Finding, finding, type Outcome } from "../../../findings/finding.ts";
import type { Point } from "../../../geometry/point.ts";
import { isSimple, polygonBounds, rectInsidePolygon, signedArea } from "../../../geometry/polygon.ts";
import { type Rect, rectsOverlap } from "../../../geometry/rect.ts";
import { type Message, message } from "../../../text/message.ts";
import { type Drawing, type DrawingUnit, type Drawn, layersOf, UNIT_MM } from "../dxf/drawing.ts";
import "../texts.ts";
import { atOrigin, cleaned } from "./outline.ts";
import type { TakenFace } from "./shape.ts";

/** How far a corner may lie off the upright rectangle round its line (mm): what a drawing's own rounding leaves. */
const SQUARE_WITHIN_MM = 0.5;

export type FaceOfLayer =
  | { readonly ok: true; readonly face: TakenFace; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

interface Closed {
  readonly drawn: Drawn;
  /** Millimetres of the drawing. */
  readonly outline: readonly Point[];
}

export function faceOfLayer(
  drawing: Drawing,
  { layer, unit }: { readonly layer: string; readonly unit: DrawingUnit },
): FaceOfLayer {
  const on = drawing.drawn.filter((one) => one.layer === layer);
  const tell = teller(drawing.name, layer);
  const findings: Finding[] = on.flatMap((one) => unusable(one, tell));
  const aside = on.filter(({ kind }) => kind === "aside").length;
  if (aside > 0) findings.push(tell("attention", message("intake.layer.aside", { count: aside })));
  const { closed, doubled } = apart(
    on
      .filter(({ kind }) => kind === "closed")
      .map((drawn) => ({
        drawn,
        outline: cleaned(drawn.points.map(([x, y]): Point => [x * UNIT_MM[unit], y * UNIT_MM[unit]])),
      })),
  );
  for (const one of doubled) {
    findings.push(tell("attention", message("intake.line.doubled", { handle: one.drawn.handle })));
  }
  for (const { drawn, outline } of closed) {
    if (outline.length < 3 || !isSimple(outline))
      findings.push(tell("fail", message("intake.line.crosses", valuesOf(drawn)), "crosses"));
  }
  const whole = closed.reduce<Closed | undefined>(
    (best, one) => (!best || areaOf(one) > areaOf(best) ? one : best),
    undefined,
  );
  if (!whole) {
    const layers = layersOf(drawing).map(({ name, closed: count }) =>
      message("intake.layer.named", { layer: name, count }),
    );
    const says = layers.length > 0 ? message("intake.layer.empty", { layers }) : message("intake.layer.none");
    return { ok: false, findings: [...findings, tell("fail", says, "empty")] };
  }
  if (findings.some(({ outcome }) => outcome === "fail")) return { ok: false, findings };
  const openings = closed.filter((one) => one !== whole);
  for (const one of openings) findings.push(...openingFaults(one, { whole, openings, tell }));
  if (findings.some(({ outcome }) => outcome === "fail")) return { ok: false, findings };
  return { ok: true, face: atOrigin(whole.outline, openings.map(rectOf)), findings };
}

type Tell = (outcome: Outcome, says: Message, hint?: string) => Finding;

function teller(file: string, layer: string): Tell {
  return (outcome, says, hint) =>
    finding({
      code: "F035",
      outcome,
      where: {},
      says: message(says.key, { file, layer, ...says.values }),
      ...(hint && { hint: message(`intake.hint.line.${hint}`, { layer }) }),
    });
}

function valuesOf({ handle, type }: Drawn) {
  return { handle, type };
}

function unusable(one: Drawn, tell: Tell): Finding[] {
  if (one.kind === "closed" || one.kind === "aside") return [];
  return [tell("fail", message(`intake.line.${one.kind}`, valuesOf(one)), one.kind)];
}

function areaOf({ outline }: Closed): number {
  return outline.length < 3 ? 0 : Math.abs(signedArea(outline));
}

/** A line drawn twice counts once. */
function apart(lines: readonly Closed[]): { closed: Closed[]; doubled: Closed[] } {
  const seen = new Set<string>();
  const closed: Closed[] = [];
  const doubled: Closed[] = [];
  for (const one of lines) {
    const key = one.outline
      .map((point) => point.join(" "))
      .sort()
      .join(",");
    (seen.has(key) ? doubled : closed).push(one);
    seen.add(key);
  }
  return { closed, doubled };
}

function rectOf({ outline }: Closed): Rect {
  return polygonBounds(outline);
}

function openingFaults(
  one: Closed,
  { whole, openings, tell }: { whole: Closed; openings: readonly Closed[]; tell: Tell },
): Finding[] {
  const rect = rectOf(one);
  const values = valuesOf(one.drawn);
  const square =
    one.outline.length === 4 &&
    one.outline.every(
      ([x, y]) =>
        Math.min(...rect.x.map((end) => Math.abs(x - end))) <= SQUARE_WITHIN_MM &&
        Math.min(...rect.y.map((end) => Math.abs(y - end))) <= SQUARE_WITHIN_MM,
    );
  if (!square) return [tell("fail", message("intake.line.askew", values), "askew")];
  if (!rectInsidePolygon(rect, whole.outline)) {
    return [
      tell("fail", message("intake.line.outside", { ...values, outline: whole.drawn.handle }), "outside"),
    ];
  }
  const other = openings
    .slice(0, openings.indexOf(one))
    .find((earlier) => rectsOverlap(rectOf(earlier), rect));
  if (!other) return [];
  return [
    tell("fail", message("intake.line.overlaps", { ...values, other: other.drawn.handle }), "overlaps"),
  ];
}
