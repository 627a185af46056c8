/** The line patterns of ISO 128-2 as line types, their dashes in millimetres on paper for narrow lines. */
import { dashes, type LinePattern } from "../../scene/roles.ts";

interface LineType {
  readonly name: string;
  readonly about: string;
  /** Dash and gap in turn. */
  readonly dashes: readonly number[];
}

export const LINE_TYPES: Readonly<Record<LinePattern, LineType>> = {
  continuous: { name: "Continuous", about: "", dashes: [] },
  dashed: { name: "DASHED", about: "__ __ __", dashes: narrow("dashed") },
  "long-dash-dot": { name: "LONG-DASH-DOT", about: "____ . ____", dashes: narrow("long-dash-dot") },
};

function narrow(pattern: LinePattern): readonly number[] {
  return dashes({ width: "narrow", pattern, ink: "ink" });
}
