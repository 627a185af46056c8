/** Runs one command line: reads its words, does the work, prints the answer, and says with which code to end. */

import { findingJson } from "../output/json/finding.ts";
import { printJson } from "../output/json/print.ts";
import { printFindings } from "../output/report/findings.ts";
import { LANGUAGES, type Language } from "../text/catalogue.ts";
import type { Message } from "../text/message.ts";
import { type Reader, say } from "../text/say.ts";
import { isRefusal, type Refusal } from "./answer.ts";
import type { ExitCode, Io } from "./io.ts";
import { firstReader, progressOn } from "./job.ts";
import { parse } from "./program.ts";
import { VERSION } from "./version.ts";

/** @param argv the words after the program's own name */
export async function run(argv: readonly string[], io: Io): Promise<ExitCode> {
  const language = typedLanguage(argv);
  const before = firstReader(io, language === undefined ? {} : { language });
  const parsed = parse(argv, { reader: before, version: VERSION });
  if ("shown" in parsed) {
    io.out(parsed.shown);
    return 0;
  }
  if ("refused" in parsed) return refuse(parsed, { io, reader: before, json: argv.includes("--json") });
  const { command, words, options } = parsed;
  const reader = firstReader(io, options);
  const progress = progressOn(io, reader);
  const { command: work } = await command.load();
  const answer = await work({ io, words, options, reader, progress: progress.tell, clear: progress.clear });
  progress.clear();
  if ("ended" in answer) return answer.ended;
  if (isRefusal(answer)) return refuse(answer, { io, reader, json: options.json === true });
  if (answer.aside !== undefined) io.err(answer.aside);
  io.out(options.json ? printJson(answer.json) : answer.text);
  return answer.exit;
}

/** A refusal is worded before the options are read, so the language is looked for in the words as they stand. */
function typedLanguage(argv: readonly string[]): Language | undefined {
  const at = argv.findIndex((word) => word.startsWith("--language"));
  const word = argv[at]?.includes("=") ? argv[at].split("=")[1] : argv[at + 1];
  return at < 0 ? undefined : LANGUAGES.find((language) => language === word);
}

function refuse(
  { refused, hint, findings = [] }: Refusal,
  { io, reader, json }: { io: Io; reader: Reader; json: boolean },
): ExitCode {
  const tell = (what: Message): string => say(what, reader);
  io.err(`Outerleaf: ${tell(refused)}\n`);
  if (findings.length > 0) io.err(printFindings(findings, { reader }));
  if (hint !== undefined) io.err(`  → ${tell(hint)}\n`);
  if (json) {
    const told = findings.map((finding) => findingJson(finding, { reader }));
    io.out(
      printJson({
        schemaVersion: 1,
        refused: tell(refused),
        ...(hint === undefined ? {} : { hint: tell(hint) }),
        findings: told,
      }),
    );
  }
  return 2;
}
