/** `outerleaf saw`: cuts a plain list of stock and demand, with no facade. */
import { type SawAnswer, type SawProblem, saw } from "../../cutting/index.ts";
import { parseJson } from "../../project/json.ts";
import { shown } from "../../project/problem.ts";
import { type Message, message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { type Answer, isRefusal } from "../answer.ts";
import { readText } from "../files.ts";
import type { Job } from "../job.ts";
import { editDocument } from "../open-project.ts";

export async function command(job: Job): Promise<Answer> {
  const { words, io, options, reader } = job;
  const file = await readText(words[0] ?? "", io.cwd);
  if (isRefusal(file)) return file;
  const parsed = parseJson(file.text.replace(/^\uFEFF/, ""));
  if (!parsed.ok) {
    const [fault] = parsed.faults;
    return {
      refused: message("cli.refused.list-not-json", {
        file: file.name,
        line: fault?.line ?? 1,
        column: fault?.column ?? 1,
      }),
      hint: message("cli.hint.saw-list"),
    };
  }
  const edited =
    options.edit === undefined ? { document: parsed.value } : await editDocument(job, parsed.value);
  if (isRefusal(edited)) return edited;
  job.progress(message("cli.doing.cut"));
  const { turn = false, stages, budget, seed } = options;
  const { answers, problems } = saw(edited.document, {
    turn,
    ...(stages !== undefined && { stages }),
    ...(budget !== undefined && { budget }),
    ...(seed !== undefined && { seed }),
  });
  const told = problems.map((problem) => say(problemText(problem, file.name), reader));
  const short = answers.some((answer) => answer.unplaced.length > 0 || answer.problems.length > 0);
  return {
    exit: problems.length > 0 ? 2 : short ? 1 : 0,
    json: {
      schemaVersion: 1,
      answers,
      problems: problems.map((problem, at) => ({ ...problem, says: told[at] })),
    },
    text: answers.map((answer) => answerText(answer, reader)).join("\n"),
    ...(told.length > 0 && {
      aside: `${told.join("\n")}\n  → ${say(message("cli.hint.saw-list"), reader)}\n`,
    }),
  };
}

function problemText({ code, where, value }: SawProblem, file: string): Message {
  return message(`cli.saw.problem.${code}`, { file, path: where === "" ? "/" : where, found: shown(value) });
}

function answerText(answer: SawAnswer, reader: Reader): string {
  const { id, cost, bound, gap, proven, iterations, seed, unplaced, problems } = answer;
  const used = answer.kind === "2d" ? answer.sheets.length : answer.bars.length;
  const title = message(answer.kind === "2d" ? "cli.saw.sheets" : "cli.saw.bars", { id, count: used });
  const claim = message(proven ? "cli.saw.proven" : "cli.saw.bound", { cost, bound, gap: gap * 100 });
  const left = unplaced.map(({ item, count, reason }) =>
    say(message("cli.saw.unplaced", { item, count, why: message(`cli.saw.reason.${reason}`) }), reader),
  );
  return [
    say(title, reader),
    `  ${say(claim, reader)}`,
    `  ${say(message("cli.saw.search", { iterations, seed }), reader)}`,
    ...plan(answer),
    ...left.map((line) => `  ${line}`),
    ...(problems.length > 0
      ? [`  ${say(message("cli.saw.refused", { count: problems.length }), reader)}`]
      : []),
    "",
  ].join("\n");
}

/** Items by their place in the list, so that the lines can be read beside it. */
function plan(answer: SawAnswer): string[] {
  if (answer.kind === "2d") {
    return answer.sheets.map(({ sheet, placements }, at) => {
      const pieces = placements.map(
        ({ item, width, height, x, y }) => `[${item}] ${width} × ${height} @ ${x}, ${y}`,
      );
      return `  #${at + 1} [${sheet}]: ${pieces.join("; ")}`;
    });
  }
  return answer.bars.map(({ stock, pieces }, at) => {
    const lengths = pieces.map(({ item, from, to }) => `[${item}] ${to - from}`);
    return `  #${at + 1} [${stock}]: ${lengths.join("; ")}`;
  });
}
