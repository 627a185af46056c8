/** The findings of an issue as text: what is to be settled in front, then what holds, then who answers for what. */
import type { Finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { mapped } from "../pieces.ts";
import { countLine, printFinding, unsettled } from "../report/findings.ts";

export function* findingsReport(
  { project, findings }: { project: Project; findings: readonly Finding[] },
  reader: Reader,
): Generator<string> {
  const options = { reader, waivers: project.waivers };
  const open = new Set(unsettled(findings));
  const holding = findings.filter((finding) => !open.has(finding));
  const title = say(
    message("cli.report.title", { title: project.title, revision: project.revision ?? "–" }),
    reader,
  );
  const line = (text: string): string => `${text}\n`;
  yield line(title);
  yield line(countLine(findings, options));
  yield line(say(message("cli.caution"), reader));
  yield line("");
  yield line(say(message("cli.report.open"), reader));
  yield line("");
  yield* mapped(open, (one) => printFinding(one, options));
  yield line("");
  yield line(say(message("cli.report.holding"), reader));
  yield line("");
  yield* mapped(holding, (one) => printFinding(one, options));
}
