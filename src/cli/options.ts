/** The options of the command line: how each is written, and what may stand after it. */
import type { DrawingUnit } from "../project/intake/dxf/drawing.ts";
import type { Role } from "../store/role.ts";
import type { Language } from "../text/catalogue.ts";
import { type Message, message } from "../text/message.ts";
import type { Reader } from "../text/say.ts";
import type { Refusal } from "./answer.ts";

/** Options as a command finds them: read, and in their range. */
export interface Options {
  readonly json?: boolean;
  readonly edit?: string;
  readonly language?: Language;
  readonly units?: Reader["units"];
  readonly to?: string;
  readonly port?: number;
  readonly data?: string;
  readonly lan?: boolean;
  readonly certificate?: string;
  readonly key?: string;
  readonly role?: Role;
  readonly address?: string;
  readonly once?: boolean;
  readonly turn?: boolean;
  readonly stages?: number;
  readonly budget?: number;
  readonly seed?: number;
  readonly face?: string;
  readonly planing?: number;
  readonly journal?: string;
  readonly steps?: number;
  readonly readings?: string;
  readonly since?: string;
  readonly narrowest?: number;
  readonly widest?: number;
  readonly weather?: string;
  readonly mark?: string;
  readonly at?: string;
  readonly depth?: "membrane" | "batten";
  readonly into?: string;
  readonly layer?: string;
  readonly walls?: string;
  readonly turned?: readonly string[];
  readonly columns?: string;
  readonly as?: "pile" | "readings";
  readonly drawn?: DrawingUnit;
  readonly revision?: string;
  readonly note?: string;
  readonly who?: string;
  readonly date?: string;
  readonly calendar?: boolean;
}

export interface OptionSpec {
  readonly name: keyof Options;
  /** As it is typed, where a word of another command's stands for it. */
  readonly flag?: string;
  /** May be given more than once. */
  readonly many?: boolean;
  /** What stands for its value in the help; none for a switch. */
  readonly value?: string;
  /** The words that may stand there. */
  readonly words?: readonly string[];
  /** The whole numbers that may stand there. */
  readonly range?: readonly [least: number, most: number];
  /** Must be given. */
  readonly needed?: boolean;
  /** Key of what it is for, where that differs from the other commands that have an option of this name. */
  readonly about?: string;
}

export const JSON_OPTION: OptionSpec = { name: "json" };
export const EDIT_OPTION: OptionSpec = { name: "edit", value: "PATCH.json" };
export const LANGUAGE_OPTION: OptionSpec = { name: "language", value: "en|fr", words: ["en", "fr"] };
export const UNITS_OPTION: OptionSpec = {
  name: "units",
  value: "mm|feet-inch",
  words: ["mm", "feet-inch"],
};
export const FOLDER_OPTION: OptionSpec = { name: "to", value: "DIR" };
/** Ports under 1024 are the system's; 0 asks for any free one. */
export const PORT_OPTION: OptionSpec = { name: "port", value: "N", range: [0, 65_535] };

export const LAN_OPTIONS: readonly OptionSpec[] = [
  { name: "lan" },
  { name: "certificate", value: "FILE.pem" },
  { name: "key", value: "FILE.pem" },
];

export const DATA_OPTION: OptionSpec = { name: "data", value: "DIR" };

/** As written: `--to DIR`. */
export function written(spec: OptionSpec): string {
  return spec.value === undefined ? flagOf(spec) : `${flagOf(spec)} ${spec.value}`;
}

/** Without its value: `--to`. */
export function flagOf({ name, flag = name }: OptionSpec): string {
  return `--${flag}`;
}

/** What each option is for. */
export function about({ name, about = `cli.option.${name}` }: OptionSpec): Message {
  return message(about);
}

/** Reads the values as typed; what cannot be used is refused by name, value and mend. */
export function readOptions(
  specs: readonly OptionSpec[],
  typed: Readonly<Record<string, unknown>>,
): Options | Refusal {
  const options: Record<string, unknown> = {};
  for (const spec of specs) {
    const value = typed[spec.flag ?? spec.name];
    if (value === undefined) {
      if (spec.needed) return refused("cli.refused.option-needed", spec, {});
      continue;
    }
    if (typeof value !== "string") {
      if (Array.isArray(value) && value.includes("")) return refused("cli.refused.option-empty", spec, {});
      options[spec.name] = value;
      continue;
    }
    if (value === "") return refused("cli.refused.option-empty", spec, {});
    if (spec.words !== undefined && !spec.words.includes(value)) {
      return refused("cli.refused.option-word", spec, { value, words: spec.words });
    }
    if (spec.range === undefined) {
      options[spec.name] = value;
      continue;
    }
    const [least, most] = spec.range;
    const number = Number(value);
    if (!/^\d+$/.test(value) || number < least || number > most) {
      return refused("cli.refused.option-number", spec, { value, least: String(least), most: String(most) });
    }
    options[spec.name] = number;
  }
  return options;
}

function refused(key: string, spec: OptionSpec, values: Record<string, string | readonly string[]>): Refusal {
  return { refused: message(key, { ...values, option: written(spec) }) };
}
