/** The steps of the walk round the sheet, in the order of the job. */
import type { Pick } from "../picks/pick.ts";
import type { Part } from "../sheet/parts.ts";

/** What the reader has done so far, as far as a step can tell. */
export interface Walked {
  readonly part: Part;
  readonly pick: Pick | undefined;
  /** The step of the history that is at hand. */
  readonly edits: number;
  /** A note stands open. */
  readonly noteOpen: boolean;
}

export interface Step {
  /** Ends the key of its sentence. */
  readonly name: string;
  /** The part of the job that it belongs to. */
  readonly part: Part;
  /** Where it points while its part is shown. */
  readonly place: string;
  /** What its words keep clear of besides: where the reader's hand goes. */
  readonly clearOf?: string;
  /** Whether what it asks for has been done since it began; absent where there is nothing to do but to look. */
  readonly done?: (now: Walked, atStart: Walked) => boolean;
}

const SETTING_OUT: Part = "setting-out";

/** Round one opening of the facade; without one the walk begins at the section. */
export function stepsOf(lead: Pick | undefined): readonly Step[] {
  const id = lead && lead.kind !== "face" ? lead.id : undefined;
  const place = `.drawing-host [data-of="${id && CSS.escape(id)}"]`;
  const isLead = ({ pick }: Walked): boolean => pick !== undefined && pick.kind !== "face" && pick.id === id;
  return [
    ...(id === undefined
      ? []
      : [
          {
            name: "pick",
            part: SETTING_OUT,
            place,
            clearOf: ".drawing-host",
            done: (now: Walked, atStart: Walked) => isLead(now) && !isLead(atStart),
          },
          {
            name: "drag",
            part: SETTING_OUT,
            place,
            clearOf: ".drawing-host",
            done: (now: Walked, atStart: Walked) => now.edits > atStart.edits,
          },
        ]),
    { name: "section", part: SETTING_OUT, place: ".section" },
    {
      name: "findings",
      part: SETTING_OUT,
      place: ".notes",
      done: (now, atStart) => now.noteOpen && !atStart.noteOpen,
    },
    { name: "working", part: SETTING_OUT, place: ".note.open, .notes" },
    { name: "build-up", part: "build-up", place: ".detail-band" },
    { name: "cutting", part: "cutting", place: ".detail-band" },
    { name: "order", part: "order", place: ".detail-band" },
    { name: "sheets", part: "sheets", place: ".detail-band" },
    { name: "save", part: "sheets", place: ".field-file" },
  ];
}
