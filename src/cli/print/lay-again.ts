/** A layout as text: each face with its choices side by side, then what becomes of each piece. */
import type { Rect } from "../../geometry/rect.ts";
import { countLine, printFindings } from "../../output/report/findings.ts";
import type { LaidAgain } from "../../site/as-built/lay-again.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayLength, sayNumber } from "../../text/say.ts";
import type { LayAgainFacts } from "../json/lay-again.ts";
import type { Written } from "../write-project.ts";
import { table } from "./table.ts";

export function printLayAgain(
  { title, faces, findings, fresh, waivers }: LayAgainFacts,
  { reader, written }: { readonly reader: Reader; readonly written: Written | undefined },
): string {
  const tell = (key: string, values = {}): string => say(message(`cli.lay-again.${key}`, values), reader);
  const word = (key: string): string => say(message(`built.${key}`), reader);
  const lines = faces.flatMap(({ laid, choices }) => [
    laid.kind === "found"
      ? tell("face", { face: laid.face, count: laid.pieces.length, cost: laid.cost, least: laid.least })
      : tell("cannot", { face: laid.face }),
    ...choices.flatMap(({ opening, side, drawn, measured, choices: each }) => [
      `  ${tell("side", { opening, side: word(`side-${side}`), drawn, measured })}`,
      ...each.map(({ kind, laid: one }) => {
        const choice = word(`choice-${kind}`);
        if (!one) return `    ${tell("no-choice", { choice })}`;
        const share = sayNumber(one.share * 100, 0, reader);
        return `    ${tell("choice", { choice, count: one.pieces.length, cost: one.cost, share })}`;
      }),
    ]),
    ...(laid.kind === "found" && laid.pieces.length > 0 ? ["", pieces(laid.pieces, reader)] : []),
    "",
  ]);
  const done = written
    ? message("cli.take-in.done", { file: written.file })
    : message("cli.take-in.not-written");
  return [
    tell("title", { title }),
    "",
    ...lines,
    ...(fresh.length > 0 ? [tell("new"), printFindings(fresh, { reader, waivers })] : []),
    printFindings(findings, { reader, waivers }) + countLine(findings, { reader, waivers }),
    tell("weights"),
    say(done, reader),
    say(message("cli.caution"), reader),
    "",
  ].join("\n");
}

function pieces(all: readonly LaidAgain[], reader: Reader): string {
  const head = ["mark", "come", "fate", "before", "after", "from"].map((key) =>
    say(message(`cli.lay-again.${key}`), reader),
  );
  const size = ({ x, y }: Rect): string =>
    `${sayLength(x[1] - x[0], reader, 1)} × ${sayLength(y[1] - y[0], reader, 1)}`;
  const rows = all.map(({ mark, come, fate, before, after, from }) => [
    mark,
    say(message(`built.come-${come}`), reader),
    say(message(`built.fate-${fate}`), reader),
    size(before),
    size(after),
    from?.stock ?? "",
  ]);
  return table([head, ...rows], { indent: 2 });
}
