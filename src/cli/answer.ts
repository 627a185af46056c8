/** What a command comes to: a result that can be told as JSON and as text, or a refusal of what it was given. */
import type { Finding } from "../findings/finding.ts";
import type { Message } from "../text/message.ts";
import type { ExitCode } from "./io.ts";

/** Nothing was done, because what was given cannot be used: exit code 2. */
export interface Refusal {
  readonly refused: Message;
  /** How to mend it. */
  readonly hint?: Message;
  /** One for each problem of a file. */
  readonly findings?: readonly Finding[];
}

export interface Result {
  readonly exit: ExitCode;
  /** Printed with `--json`. */
  readonly json: unknown;
  /** Printed without it. */
  readonly text: string;
  /** Said on the error stream either way. */
  readonly aside?: string;
}

/** A command that has printed all it had to say, such as one that served until it was stopped. */
export interface Ended {
  readonly ended: ExitCode;
}

export type Answer = Result | Refusal | Ended;

export function isRefusal(value: object): value is Refusal {
  return "refused" in value;
}
