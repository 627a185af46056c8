/** What a command may touch of the world besides files: the two streams, where it runs, and the wish to stop. */
import type { Language } from "../text/catalogue.ts";

/** 0 fine, 1 an unwaived fail or cannot-evaluate, 2 unusable input. */
export type ExitCode = 0 | 1 | 2;

export interface Io {
  /** Results and nothing else. */
  readonly out: (text: string) => void;
  /** Refusals, hints and progress. */
  readonly err: (text: string) => void;
  /** Whether a person watches the error stream: only then is progress shown. */
  readonly watched: boolean;
  /** The folder that paths are given from. */
  readonly cwd: string;
  /** The top folder of the program: its examples and pages lie there. */
  readonly root: string;
  /** A sum over the program's own code, by which it knows what it drew; undefined where that is not known. */
  readonly program: () => Promise<string | undefined>;
  /** The folder of the user's own data, where kept projects lie. */
  readonly dataFolder: string;
  /** The language of the reader's system, where it is one of ours. */
  readonly language: Language | undefined;
  /** Calls back when the reader asks to stop; the function given back ends that. */
  readonly onStop: (stop: () => void) => () => void;
}
