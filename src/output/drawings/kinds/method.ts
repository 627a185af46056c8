/** The method sequence: what is done in which order, from which lift, with which load, and what needs two people. */

import { CAPTION_ROOM, GAP } from "../../../scene/sheet.ts";
import { tableScenes } from "../../../scene/table.ts";
import { textBlock } from "../../../scene/text-block.ts";
import { heading } from "../../../scene/views/extent.ts";
import { holdAfter } from "../../../site/hold-points.ts";
import { type MethodStep, methodSteps, USUAL_LIFT_MM } from "../../../takeoff/method.ts";
import { message } from "../../../text/message.ts";
import { figure } from "../cells.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function methodSheets({ design: { project, facade, demands }, room, memo }: KindFacts): Drawing[] {
  const lift = project.sheets?.liftHeight ?? USUAL_LIFT_MM;
  const steps = methodSteps(facade, lift);
  return memo.recall(methodOf, { steps, lift, onePersonKg: demands.onePersonKg, room });
}

interface From extends Pick<KindFacts, "room"> {
  readonly steps: readonly MethodStep[];
  readonly lift: number;
  readonly onePersonKg: number;
}

function methodOf({ steps, lift, onePersonKg, room }: From): Drawing[] {
  if (steps.length === 0) return [];
  const notes = textBlock({
    id: "method-notes",
    title: message("drawing.title.method-notes"),
    width: Math.min(room.width, 250),
    paragraphs: [
      { text: message("drawing.method.lift", { lift }) },
      { text: message("drawing.method.weight", { limit: onePersonKg }) },
      { text: message("drawing.method.caution"), weight: "bold" },
    ],
  });
  const firstHeight = room.height - (notes.bounds.y[1] - notes.bounds.y[0]) - CAPTION_ROOM - GAP;
  const table = tableScenes({
    id: "method",
    title: message("drawing.title.method"),
    room: { ...room, firstHeight },
    rows: steps.map((step, i) => ({ ...step, number: i + 1 })),
    columns: [
      {
        head: message("drawing.column.step"),
        cell: ({ number }) => String(number),
        align: "end",
        bold: true,
      },
      { head: message("drawing.column.face"), cell: ({ face }) => heading(face) },
      { head: message("drawing.column.work"), cell: ({ step }) => message(`drawing.method.${step}`) },
      {
        head: message("drawing.column.lift"),
        cell: ({ lift }) => (lift === undefined ? undefined : String(lift)),
        align: "end",
      },
      { head: message("drawing.column.load"), cell: ({ lot }) => lot },
      { head: message("drawing.column.count"), cell: ({ marks }) => String(marks.length), align: "end" },
      { head: message("drawing.column.kg"), cell: ({ massKg }) => figure(massKg, 0), align: "end" },
      {
        head: message("drawing.column.heaviest"),
        cell: ({ heaviest }) =>
          message(heaviest.massKg > onePersonKg ? "drawing.method.two" : "drawing.method.one", {
            ...heaviest,
          }),
      },
      {
        head: message("drawing.column.hold"),
        cell: holdAfter,
      },
    ],
  });
  return [{ name: "method", type: message("drawing.document-type.method"), scenes: [notes, ...table] }];
}
