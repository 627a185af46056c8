import type { Taken } from "../../../project/intake/taken.ts";
import type { TakeDrawingProps } from "./props.ts";

/** Takes what is told; nothing where it cannot be taken, or changes nothing. */
export function TakePress({
  taken,
  says,
  onTake,
}: Pick<TakeDrawingProps, "onTake"> & {
  taken: Taken | { readonly ok: false };
  says: string;
}) {
  const isIdle = !taken.ok || taken.change?.operations.length === 0;
  return (
    <p className="edit-words">
      <button type="button" disabled={isIdle} onClick={() => taken.ok && onTake(taken)}>
        {says}
      </button>
    </p>
  );
}
