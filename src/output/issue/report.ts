/** The findings of an issue as text: what is to be settled in front, then what holds, then who answers for what. */
import type { Finding } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { type Reader, say } from "../../text/say.ts";
import { countLine, printFindings, unsettled } from "../report/findings.ts";

export function findingsReport(
  { project, findings }: { project: Project; findings: readonly Finding[] },
  reader: Reader,
): string {
  const options = { reader, waivers: project.waivers };
  const open = unsettled(findings);
  const holding = findings.filter((finding) => !open.includes(finding));
  const title = say(
    message("cli.report.title", { title: project.title, revision: project.revision ?? "–" }),
    reader,
  );
  return [
    title,
    countLine(findings, options),
    say(message("cli.caution"), reader),
    "",
    say(message("cli.report.open"), reader),
    "",
    printFindings(open, options),
    say(message("cli.report.holding"), reader),
    "",
    printFindings(holding, options),
  ].join("\n");
}
