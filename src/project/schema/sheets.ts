/** The sheet set: which sheets in which order, on what paper, the label sheets, and what was issued. */
import * as z from "zod";
import { clear, note, size } from "./values.ts";

/** In the usual order. */
export const SHEET_KINDS = [
  "cover",
  "key-plan",
  "set-out",
  "battens",
  "packing",
  "fixings",
  "sections",
  "plan-sections",
  "drilling",
  "cut-sheets",
  "cut-lengths",
  "rips",
  "bent-metal",
  "schedules",
  "order",
  "book",
  "light",
  "wind",
  "method",
  "hold-points",
  "finish",
  "owner",
] as const;

export type SheetKind = (typeof SHEET_KINDS)[number];

const mark = z.string().min(1);

export const SHEET_PAPERS = [
  "A4",
  "A3",
  "A2",
  "A1",
  "A0",
  "letter",
  "tabloid",
  "17 × 22",
  "22 × 34",
  "24 × 36",
] as const;

export const LABEL_PAPERS = ["A4", "letter"] as const;
export const MOST_LABEL_COLUMNS = 12;
export const MOST_LABEL_ROWS = 40;

/** A sheet of labels, told by its measures. */
const labels = z.looseObject({
  note,
  paper: z.enum(LABEL_PAPERS),
  columns: z.int().min(1).max(MOST_LABEL_COLUMNS),
  rows: z.int().min(1).max(MOST_LABEL_ROWS),
  width: size,
  height: size,
  /** From the paper's left and top edges to the first label. */
  left: clear,
  top: clear,
  /** Between labels. */
  gapX: clear,
  gapY: clear,
});

export const sheets = z.looseObject({
  note,
  order: z
    .array(z.enum(SHEET_KINDS))
    .min(1)
    .optional()
    .describe("Which kinds of sheets, in which order; all in the usual order where absent."),
  leaveOut: z.array(z.string().min(1)).optional().describe("Names of single sheets that are not issued."),
  paper: z
    .enum(SHEET_PAPERS)
    .optional()
    .describe(
      "What sheets are printed on; A3 or 11 × 17 where absent. What does not fit takes a larger one.",
    ),
  labels: labels.optional(),
  siteAddress: z
    .string()
    .regex(/^https?:\/\/[^\s/?#@]{1,200}\/?$/)
    .optional()
    .describe(
      "Where phones reach the workbench, as https://192.0.2.7:8443; codes of labels then open the piece.",
    ),
  /** From one deck of the scaffold to the next. */
  liftHeight: size.optional(),
});

export type LabelSheet = z.output<typeof labels>;

export type SheetPaper = (typeof SHEET_PAPERS)[number];

/** What went out. Marks that stand here are never given to another piece. */
export const issued = z.looseObject({
  note,
  revisions: z
    .array(
      z.looseObject({
        revision: z.string().min(1),
        when: z.iso.date(),
        who: z.string().optional(),
        note: z.string().min(1),
        /** Marks of pieces that differ from the revision before, and of those that are no more. */
        changed: z.array(mark).optional(),
        gone: z.array(mark).optional(),
      }),
    )
    .min(1),
  /** Each piece of the last revision by its mark, with a sum over everything that is drawn of it. */
  pieces: z.record(mark, z.string()),
});
