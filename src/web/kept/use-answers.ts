import { useCallback, useState } from "react";
import { useWords } from "../words.ts";
import type { Asked } from "../work/people-api.ts";

export interface Answers {
  /** What the latest answer said was wrong. */
  readonly wrong: string | undefined;
  readonly setWrong: (says: string | undefined) => void;
  /** Hands on what was answered, or tells why there is none. */
  take<Answer>(asked: Asked<Answer>, use: (answer: Answer) => void): void;
}

/** The server's answers on people and their devices. */
export function useAnswers(): Answers {
  const { w } = useWords();
  const [wrong, setWrong] = useState<string>();
  const take = useCallback(
    <Answer>(asked: Asked<Answer>, use: (answer: Answer) => void): void => {
      setWrong(asked.ok ? undefined : (asked.says ?? w("page.kept.unreached")));
      if (asked.ok) use(asked.answer);
    },
    [w],
  );
  return { wrong, setWrong, take };
}
