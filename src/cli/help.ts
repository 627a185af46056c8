/** Help that teaches: what a command is for, an example to try, what it writes; and the path of a whole job. */
import { message } from "../text/message.ts";
import { type Reader, say } from "../text/say.ts";
import { COMMANDS, type CommandSpec } from "./commands.ts";
import { about, written } from "./options.ts";
import { table } from "./print/table.ts";

export function programHelp(reader: Reader): string {
  const tell = (key: string): string => say(message(key), reader);
  const lines = COMMANDS.map((spec) => [usage(spec), tell(`cli.command.${spec.name}`)]);
  const job = lines.filter((_, i) => !BESIDE.includes(COMMANDS[i]?.name ?? ""));
  const beside = lines.filter((_, i) => BESIDE.includes(COMMANDS[i]?.name ?? ""));
  return [
    tell("cli.help.what"),
    "",
    `${tell("cli.help.usage")} outerleaf COMMAND …`,
    "",
    tell("cli.help.path"),
    table(job, { indent: 2 }),
    "",
    tell("cli.help.beside"),
    table(beside, { indent: 2 }),
    "",
    tell("cli.help.common"),
    tell("cli.help.exit"),
    tell("cli.help.more"),
    "",
  ].join("\n");
}

/** Commands that are no step of a job. */
const BESIDE: readonly string[] = ["people", "backup", "restore", "export", "import", "saw", "reckon"];

export function commandHelp(spec: CommandSpec, reader: Reader): string {
  const tell = (key: string): string => say(message(key), reader);
  const options = spec.options.map((option) => [written(option), say(about(option), reader)]);
  return [
    `${tell("cli.help.usage")} outerleaf ${usage(spec)}${spec.options.some(({ needed }) => needed) ? "" : ` [${tell("cli.help.options-word")}]`}`,
    "",
    tell(`cli.command.${spec.name}`),
    tell(`cli.writes.${spec.name}`),
    "",
    tell("cli.help.example"),
    `  ${spec.example}`,
    "",
    tell("cli.help.options"),
    table(options, { indent: 2 }),
    "",
    tell("cli.help.exit"),
    "",
  ].join("\n");
}

function usage({ name, takes, options }: CommandSpec): string {
  const words = takes.map((one) => {
    const word = one.many ? `${one.name} …` : one.name;
    return one.needed ? word : `[${word}]`;
  });
  return [name, ...words, ...options.filter(({ needed }) => needed).map(written)].join(" ");
}
