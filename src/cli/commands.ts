/** Every command: what it takes, and where its work is found. A command's file is loaded only when it is asked for. */
import { DRAWING_UNITS } from "../project/intake/dxf/drawing.ts";
import { ROLES } from "../store/role.ts";
import type { Answer } from "./answer.ts";
import type { Job } from "./job.ts";
import {
  DATA_OPTION,
  EDIT_OPTION,
  FOLDER_OPTION,
  JSON_OPTION,
  LAN_OPTIONS,
  LANGUAGE_OPTION,
  type OptionSpec,
  PORT_OPTION,
  UNITS_OPTION,
} from "./options.ts";

/** What stands after the command's name. */
export interface ArgumentSpec {
  readonly name: string;
  readonly needed: boolean;
  /** As many as wanted. */
  readonly many?: boolean;
}

export interface CommandSpec {
  readonly name: string;
  readonly takes: readonly ArgumentSpec[];
  readonly options: readonly OptionSpec[];
  /** A line to try. */
  readonly example: string;
  readonly load: () => Promise<{ readonly command: (job: Job) => Promise<Answer> }>;
}

const FILE: ArgumentSpec = { name: "FILE", needed: true };
const READING = [LANGUAGE_OPTION, UNITS_OPTION] as const;
const USUAL = [JSON_OPTION, EDIT_OPTION, ...READING] as const;

/** In the order of a job, then what stands beside it. */
export const COMMANDS: readonly CommandSpec[] = [
  {
    name: "new",
    takes: [FILE],
    options: USUAL,
    example: "outerleaf new house.outerleaf.json",
    load: () => import("./commands/new.ts"),
  },
  {
    name: "check",
    takes: [FILE],
    options: USUAL,
    example: "outerleaf check house.outerleaf.json",
    load: () => import("./commands/check.ts"),
  },
  {
    name: "take-in",
    takes: [FILE],
    options: [
      ...USUAL,
      { name: "into", value: "PROJECT.json" },
      { name: "face", value: "ID", about: "cli.option.take-in.face" },
      { name: "layer", value: "NAME" },
      { name: "walls", value: "NAME,…" },
      { name: "turned", flag: "turn", value: "WALL", many: true },
      { name: "drawn", value: DRAWING_UNITS.join("|"), words: DRAWING_UNITS },
      { name: "as", value: "pile|readings", words: ["pile", "readings"] },
      { name: "columns", value: "NAME=TITLE,…" },
      { name: "to", value: "FILE", about: "cli.option.take-in.to" },
    ],
    example:
      "outerleaf take-in front.dxf --layer FRONT --into house.outerleaf.json --face front --to house-2.outerleaf.json",
    load: () => import("./commands/take-in.ts"),
  },
  {
    name: "planes",
    takes: [FILE],
    options: [...USUAL, { name: "face", value: "ID" }, { name: "planing", value: "MM", range: [0, 20] }],
    example: "outerleaf planes house.outerleaf.json --face front --planing 3",
    load: () => import("./commands/planes.ts"),
  },
  {
    name: "set-out",
    takes: [FILE],
    options: USUAL,
    example: "outerleaf set-out house.outerleaf.json --json > set-out.json",
    load: () => import("./commands/set-out.ts"),
  },
  {
    name: "prove",
    takes: [FILE],
    options: [...USUAL, { name: "weather", value: "FILE.epw" }],
    example: "outerleaf prove house.outerleaf.json --edit wider-gap.json",
    load: () => import("./commands/prove.ts"),
  },
  {
    name: "rips",
    takes: [FILE],
    options: [
      ...USUAL,
      { name: "narrowest", value: "MM", range: [40, 300] },
      { name: "widest", value: "MM", range: [40, 300] },
    ],
    example: "outerleaf rips house.outerleaf.json --narrowest 80 --widest 140",
    load: () => import("./commands/rips.ts"),
  },
  {
    name: "cut",
    takes: [FILE],
    options: [...USUAL, { name: "since", value: "STATE.json" }],
    example: "outerleaf cut house.outerleaf.json --since sheet-7-broke.json",
    load: () => import("./commands/cut.ts"),
  },
  {
    name: "takeoff",
    takes: [FILE],
    options: USUAL,
    example: "outerleaf takeoff house.outerleaf.json --json",
    load: () => import("./commands/takeoff.ts"),
  },
  {
    name: "pack",
    takes: [FILE],
    options: [
      ...USUAL,
      { name: "face", value: "ID", about: "cli.option.pack.face" },
      { name: "readings", value: "TABLE" },
      { name: "journal", value: "FILE.json" },
    ],
    example: "outerleaf pack house.outerleaf.json --face front --readings front.csv",
    load: () => import("./commands/pack.ts"),
  },
  {
    name: "lay-again",
    takes: [FILE],
    options: [
      ...USUAL,
      { name: "face", value: "ID", about: "cli.option.lay-again.face" },
      { name: "journal", value: "FILE.json" },
      { name: "steps", value: "N", range: [1, 100_000_000] },
      { name: "to", value: "FILE", about: "cli.option.take-in.to" },
    ],
    example: "outerleaf lay-again house.outerleaf.json --journal told.json --to house-2.outerleaf.json",
    load: () => import("./commands/lay-again.ts"),
  },
  {
    name: "upkeep",
    takes: [FILE],
    options: [...USUAL, { name: "calendar" }],
    example: "outerleaf upkeep house.outerleaf.json --calendar > house.ics",
    load: () => import("./commands/upkeep.ts"),
  },
  {
    name: "reach",
    takes: [FILE],
    options: [
      ...USUAL,
      { name: "mark", value: "MARK" },
      { name: "face", value: "ID", about: "cli.option.reach.face" },
      { name: "at", value: "X,Y" },
      { name: "depth", value: "membrane|batten", words: ["membrane", "batten"] },
    ],
    example: "outerleaf reach house.outerleaf.json --face front --at 2700,400",
    load: () => import("./commands/reach.ts"),
  },
  {
    name: "issue",
    takes: [FILE],
    options: [
      ...USUAL,
      { ...FOLDER_OPTION, needed: true },
      { name: "revision", value: "B" },
      { name: "note", value: "TEXT" },
      { name: "who", value: "NAME" },
      { name: "date", value: "YYYY-MM-DD" },
      DATA_OPTION,
    ],
    example: 'outerleaf issue house.outerleaf.json --to out/house --revision A --note "for the saw"',
    load: () => import("./commands/issue.ts"),
  },
  {
    name: "serve",
    takes: [FILE],
    options: [...USUAL, PORT_OPTION, DATA_OPTION, ...LAN_OPTIONS],
    example: "outerleaf serve house.outerleaf.json --port 4300",
    load: () => import("./commands/serve.ts"),
  },
  {
    name: "start",
    takes: [{ name: "FILE", needed: false }],
    options: [...USUAL, { name: "once" }, FOLDER_OPTION, PORT_OPTION, DATA_OPTION, ...LAN_OPTIONS],
    example: "outerleaf start house.outerleaf.json --once",
    load: () => import("./commands/start.ts"),
  },
  {
    name: "people",
    takes: [
      { name: "list|invite|revoke", needed: false },
      { name: "NAME", needed: false },
    ],
    options: [
      JSON_OPTION,
      { name: "role", value: ROLES.join("|"), words: ROLES },
      { name: "address", value: "https://HOST:PORT" },
      DATA_OPTION,
      ...READING,
    ],
    example: 'outerleaf people invite "Ada" --role site',
    load: () => import("./commands/people.ts"),
  },
  {
    name: "backup",
    takes: [FILE],
    options: [JSON_OPTION, DATA_OPTION, ...READING],
    example: "outerleaf backup monday.sqlite",
    load: () => import("./commands/backup.ts"),
  },
  {
    name: "restore",
    takes: [FILE],
    options: [JSON_OPTION, DATA_OPTION, ...READING],
    example: "outerleaf restore monday.sqlite",
    load: () => import("./commands/restore.ts"),
  },
  {
    name: "export",
    takes: [FILE],
    options: [
      JSON_OPTION,
      { name: "to", value: "FILE.zip", needed: true, about: "cli.option.export.to" },
      DATA_OPTION,
      ...READING,
    ],
    example: "outerleaf export house.outerleaf.json --to house.zip",
    load: () => import("./commands/export.ts"),
  },
  {
    name: "import",
    takes: [{ name: "FILE.zip", needed: true }],
    options: [JSON_OPTION, DATA_OPTION, ...READING],
    example: "outerleaf import house.zip",
    load: () => import("./commands/import.ts"),
  },
  {
    name: "saw",
    takes: [{ name: "LIST.json", needed: true }],
    options: [
      ...USUAL,
      { name: "turn" },
      { name: "stages", value: "N", range: [1, 20] },
      { name: "budget", value: "N", range: [0, 1_000_000] },
      { name: "seed", value: "N", range: [1, 2_147_483_647] },
    ],
    example: "outerleaf saw shelves.json --turn --stages 3",
    load: () => import("./commands/saw.ts"),
  },
  {
    name: "reckon",
    takes: [
      { name: "NAME", needed: false },
      { name: "key=value", needed: false, many: true },
    ],
    options: [JSON_OPTION, ...READING],
    example:
      "outerleaf reckon net-vent-area slotMm=20 battenWidthMm=64 battenCentresMm=610 freeShare=0.6 cleanShare=0.9",
    load: () => import("./commands/reckon.ts"),
  },
];
