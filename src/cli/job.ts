/** One run of a command: what was asked, by whom it is read, and how far it has come. */
import type { Project } from "../project/schema/project.ts";
import type { Message } from "../text/message.ts";
import { type Reader, say } from "../text/say.ts";
import type { Io } from "./io.ts";
import type { Options } from "./options.ts";

export interface Job {
  readonly io: Io;
  /** What stands after the command's name, in order. */
  readonly words: readonly string[];
  readonly options: Options;
  /** Who reads, as long as no project says more. */
  readonly reader: Reader;
  /** Tells a watching person what is being done; nothing stays on the screen. */
  readonly progress: (doing: Message) => void;
  /** Wipes the progress line, before a command prints by itself. */
  readonly clear: () => void;
}

/** Who reads a project: the options, then the project's own display. */
export function readerOf(project: Project, { options }: Pick<Job, "options">): Reader {
  const { language, units, denominator } = project.display;
  return { language: options.language ?? language, units: options.units ?? units, denominator };
}

/** Who reads before any project is known. */
export function firstReader(io: Pick<Io, "language">, options: Pick<Options, "language" | "units">): Reader {
  return {
    language: options.language ?? io.language ?? "en",
    units: options.units ?? "mm",
    denominator: 16,
  };
}

const CLEAR_LINE = "\r\u001b[K";

/** Progress on one line of the error stream; `clear` wipes it before anything else is said. */
export function progressOn(io: Io, reader: Reader): { tell: (doing: Message) => void; clear: () => void } {
  if (!io.watched) return { tell: () => undefined, clear: () => undefined };
  let shown = false;
  return {
    tell: (doing) => {
      io.err(`${CLEAR_LINE}${say(doing, reader)}`);
      shown = true;
    },
    clear: () => {
      if (shown) io.err(CLEAR_LINE);
      shown = false;
    },
  };
}
