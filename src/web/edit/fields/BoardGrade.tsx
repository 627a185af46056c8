import { useState } from "react";
import { MOST_LETTERS } from "../../../project/editing/grade.ts";
import { useWords } from "../../words.ts";
import { type Help, useHelp } from "../help/use-help.tsx";

/** Once for all boards of the table: a button in each row would hide what it is about. */
export function useGradeHelp(): Help {
  const { w } = useWords();
  return useHelp("pile-grade", w("schedule.column.board-grade"));
}

/** What a board of the pile was sorted as, to be typed. */
export function BoardGrade({
  board,
  grade,
  onGrade,
}: {
  board: string;
  grade: string | undefined;
  onGrade(typed: string): void;
}) {
  const { w } = useWords();
  const [typed, setTyped] = useState<string>();
  const commit = (): void => {
    if (typed !== undefined) onGrade(typed);
    setTyped(undefined);
  };
  return (
    <input
      className="board-grade"
      aria-label={w("page.pile.grade-of", { board })}
      autoComplete="off"
      maxLength={MOST_LETTERS}
      value={typed ?? grade ?? ""}
      onChange={({ target }) => setTyped(target.value)}
      onBlur={commit}
      onKeyDown={({ key }) => {
        if (key === "Enter") commit();
        if (key === "Escape") setTyped(undefined);
      }}
    />
  );
}
