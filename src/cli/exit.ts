/** The exit code that findings ask for. */
import { blocks, type Finding } from "../findings/finding.ts";
import { type Waiver, waiverOf } from "../project/waivers.ts";

/** 1 where one blocks and nobody answers for it. */
export function exitOf(findings: readonly Finding[], waivers: readonly Waiver[] | undefined): 0 | 1 {
  return findings.some((finding) => blocks(finding) && waiverOf(finding, waivers) === undefined) ? 1 : 0;
}
