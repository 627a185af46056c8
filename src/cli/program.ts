/** Reads the words of a command line. The parser stays behind this file; its complaints come back in our words. */
import { Command, CommanderError } from "commander";
import { nearest } from "../project/nearest.ts";
import { type Message, message } from "../text/message.ts";
import type { Reader } from "../text/say.ts";
import type { Refusal } from "./answer.ts";
import { COMMANDS, type CommandSpec } from "./commands.ts";
import { commandHelp, programHelp } from "./help.ts";
import { about, flagOf, type Options, readOptions, written } from "./options.ts";

export type Parsed =
  | {
      readonly command: CommandSpec;
      readonly words: readonly string[];
      readonly options: Options;
    }
  /** Help or the version, to be printed. */
  | { readonly shown: string }
  | Refusal;

/** Reads `argv` (without the program's own name); `reader` is who the help is written for. */
export function parse(
  argv: readonly string[],
  { reader, version }: { reader: Reader; version: string },
): Parsed {
  let shown = "";
  let asked: { spec: CommandSpec; words: string[]; typed: Record<string, unknown> } | undefined;
  const show = (text: string): void => {
    shown += text;
  };
  const program = new Command("outerleaf");
  const prepare = (command: Command, help: () => string): Command =>
    command
      .exitOverride()
      .showSuggestionAfterError(false)
      .configureOutput({ writeOut: show, writeErr: () => undefined, outputError: () => undefined })
      .configureHelp({ formatHelp: help });
  prepare(program, () => programHelp(reader)).version(version);
  for (const spec of COMMANDS) {
    const command = prepare(program.command(spec.name), () => commandHelp(spec, reader));
    command.argument("[words...]").action((words: string[], typed: Record<string, unknown>) => {
      asked = { spec, words, typed };
    });
    for (const option of spec.options) {
      const { key } = about(option);
      if (option.value === undefined) command.option(flagOf(option), key);
      else if (option.many)
        command.option(`${flagOf(option)} <value>`, key, (one: string, others: readonly string[] = []) => [
          ...others,
          one,
        ]);
      else command.option(`${flagOf(option)} <value>`, key);
    }
  }
  try {
    program.parse(argv, { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (shown !== "") return { shown };
    return complaint(error, argv);
  }
  return asked === undefined ? { shown } : checked(asked.spec, asked.words, asked.typed);
}

function checked(
  command: CommandSpec,
  words: readonly string[],
  typed: Readonly<Record<string, unknown>>,
): Parsed {
  const missing = command.takes.filter(({ needed }) => needed)[words.length];
  if (missing !== undefined) {
    return {
      refused: message("cli.refused.argument-missing", { command: command.name, argument: missing.name }),
      hint: message("cli.hint.example", { example: command.example }),
    };
  }
  if (!command.takes.some(({ many }) => many) && words.length > command.takes.length) {
    return {
      refused: message("cli.refused.argument-extra", {
        command: command.name,
        extra: words.slice(command.takes.length),
      }),
      hint: message("cli.hint.one-file"),
    };
  }
  const empty = words.indexOf("");
  if (empty >= 0) {
    const name = command.takes[empty]?.name ?? "";
    return { refused: message("cli.refused.argument-empty", { command: command.name, argument: name }) };
  }
  const options = readOptions(command.options, typed);
  return "refused" in options ? options : { command, words, options };
}

/** The parser quotes what it stumbled over. */
function complaint(error: CommanderError, argv: readonly string[]): Refusal {
  const what = /'([^']*)'/.exec(error.message)?.[1] ?? "";
  const command = COMMANDS.find(({ name }) => name === argv.find((word) => !word.startsWith("-")));
  const helps = message("cli.hint.help", { command: command === undefined ? "" : ` ${command.name}` });
  switch (error.code) {
    case "commander.unknownCommand": {
      const names = COMMANDS.map(({ name }) => name);
      const near = nearest(what, names);
      return {
        refused: message("cli.refused.unknown-command", { command: what }),
        hint: near === undefined ? message("cli.hint.commands", { names }) : meant(near),
      };
    }
    case "commander.unknownOption": {
      const known = (command?.options ?? []).map(flagOf);
      const near = nearest(what, [...known, "--help"]);
      return {
        refused: message("cli.refused.unknown-option", { option: what }),
        hint:
          command === undefined
            ? message("cli.hint.options-after")
            : near === undefined
              ? helps
              : meant(near),
      };
    }
    case "commander.optionMissingArgument": {
      const option = command?.options.find((one) => what.startsWith(`${flagOf(one)} `));
      return {
        refused: message("cli.refused.option-empty", {
          option: option === undefined ? what : written(option),
        }),
        hint: helps,
      };
    }
    default:
      // The parser shows its help when there is no command at all.
      return { refused: message("cli.refused.no-command"), hint: helps };
  }
}

function meant(near: string): Message {
  return message("cli.hint.meant", { near });
}
