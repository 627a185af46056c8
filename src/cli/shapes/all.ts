/** Every published shape of the command line, by the name of its schema. */
import type * as z from "zod";
import { shape as cut } from "../../output/json/shapes/cut.ts";
import { shape as setOut } from "../../output/json/shapes/set-out.ts";
import { shape as takeoff } from "../../output/json/shapes/takeoff.ts";
import { backupShape, exportShape, importShape, peopleShape, restoreShape } from "./keep.ts";
import { shape as layAgain } from "./lay-again.ts";
import { shape as pack } from "./pack.ts";
import { shape as planes } from "./planes.ts";
import { shape as reach } from "./reach.ts";
import { shape as reckon } from "./reckon.ts";
import { shape as rips } from "./rips.ts";
import { shape as saw } from "./saw.ts";
import {
  checkShape,
  issueShape,
  manifestShape,
  newShape,
  proveShape,
  refusedShape,
  serveShape,
} from "./small.ts";
import { shape as start } from "./start.ts";
import { shape as takeIn } from "./take-in.ts";
import { shape as upkeep } from "./upkeep.ts";

export const SHAPES: Readonly<Record<string, z.ZodType>> = {
  new: newShape,
  check: checkShape,
  "take-in": takeIn,
  planes,
  "set-out": setOut,
  prove: proveShape,
  rips,
  cut,
  takeoff,
  pack,
  "lay-again": layAgain,
  upkeep,
  reach,
  issue: issueShape,
  serve: serveShape,
  start,
  people: peopleShape,
  backup: backupShape,
  restore: restoreShape,
  export: exportShape,
  import: importShape,
  saw,
  reckon,
  refused: refusedShape,
  manifest: manifestShape,
};
