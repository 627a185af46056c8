/** What may be handed to the light proof beside the project. */
import type { SunMemo } from "./sun-memo.ts";
import type { SunTable } from "./sun-table.ts";

export interface LightInput {
  /** Keeps the sun in place of what the process keeps; an empty one makes it anew. */
  readonly memo?: SunMemo;
  /** A year of weather in place of clear skies. */
  readonly weather?: SunTable;
}
