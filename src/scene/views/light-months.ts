/** The dose of a light proof over the year: a bar a month at the membrane's brightest point, the average within it. */
import { rectOutline } from "../../geometry/rect.ts";
import type { ShownLight } from "../../proof/light/zone-light.ts";
import { message } from "../../text/message.ts";
import type { Item } from "../model.ts";
import { layerName } from "../roles.ts";
import { TEXT } from "./style.ts";

/** Millimetres on paper; the drawing is at full size. */
const HEIGHT = 42;
const MONTH = 9.5;
const BAR = 6.5;
/** The months' initials, alike in English and French. */
const INITIALS = [..."JFMAMJJASOND"];

export const MONTHS_WIDTH = 12 * MONTH;

/** @param at the lower left corner of the axes (mm) */
export function monthItems(light: ShownLight, at: readonly [x: number, y: number]): Item[] {
  const most = light.worst?.point.year.uvMJ ?? [];
  const [left, foot] = at;
  const step = niceStep(Math.max(...most, 0.01));
  const top = step * Math.max(1, Math.ceil(Math.max(...most, 0.01) / step));
  const high = (value: number): number => foot + (HEIGHT * value) / top;
  const layer = layerName("MEMBR");
  const marks = Array.from({ length: Math.round(top / step) + 1 }, (_, k) => k * step);
  return [
    {
      kind: "text",
      layer: layerName("MEMBR", "T"),
      at: [left, foot + HEIGHT + 4],
      text: message("light.sheet.months"),
      height: TEXT,
    },
    ...marks.flatMap((mark): Item[] => [
      {
        kind: "line",
        layer,
        from: [left, high(mark)],
        to: [left + MONTHS_WIDTH, high(mark)],
        line: mark === 0 ? "visible" : "detail",
      },
      {
        kind: "text",
        layer: layerName("MEMBR", "T"),
        at: [left - 1.5, high(mark)],
        text: message("light.sheet.mark", { mark }),
        height: TEXT,
        anchor: "end",
        baseline: "middle",
      },
    ]),
    ...INITIALS.flatMap((initial, month): Item[] => {
      const middle = left + (month + 0.5) * MONTH;
      const bar = (value: number): Item => ({
        kind: "polygon",
        layer,
        outline: rectOutline({ x: [middle - BAR / 2, middle + BAR / 2], y: [foot, high(value)] }),
        line: "detail",
        fill: "board-alt",
      });
      const average = light.average.uvMJ[month] ?? 0;
      return [
        bar(most[month] ?? 0),
        {
          kind: "polygon",
          layer,
          outline: rectOutline({ x: [middle - BAR / 4, middle + BAR / 4], y: [foot, high(average)] }),
          fill: "ink",
        },
        {
          kind: "text",
          layer: layerName("MEMBR", "T"),
          at: [middle, foot - 1.5],
          text: initial,
          height: TEXT,
          anchor: "middle",
          baseline: "top",
        },
      ];
    }),
  ];
}

/** 1, 2 or 5 times a power of ten, so that two to five steps reach the value. */
function niceStep(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const times = [0.2, 0.5, 1, 2].find((one) => value / (one * power) <= 5) ?? 2;
  return times * power;
}
