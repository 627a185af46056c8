import type { Taken } from "../../../project/intake/taken.ts";
import { useWords } from "../../words.ts";
import type { TakeDrawingProps } from "./props.ts";

/** Takes what is told; nothing where it cannot be taken. */
export function TakePress({
  taken,
  says,
  onTake,
}: Pick<TakeDrawingProps, "onTake"> & {
  taken: Taken | { readonly ok: false };
  says: "page.intake.replace" | "page.intake.begin" | "page.intake.begin-walls";
}) {
  const { w } = useWords();
  return (
    <p className="edit-words">
      <button type="button" disabled={!taken.ok} onClick={() => taken.ok && onTake(taken)}>
        {w(says)}
      </button>
    </p>
  );
}
