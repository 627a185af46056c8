import type { Message } from "../../text/message.ts";
import { useWords } from "../words.ts";

/** Tells that a sheet, length or board is spoiled, in one press; while the plan is made again it waits. */
export function SpoilPress({
  name,
  waits,
  onPress,
}: {
  name: Message | string;
  waits: boolean;
  onPress(): void;
}) {
  const { w, s } = useWords();
  return (
    <button
      type="button"
      className="spoil"
      // A press that is switched off would lose the keyboard's place.
      aria-disabled={waits}
      onClick={() => {
        if (!waits) onPress();
      }}
    >
      {w("page.spoil", { stock: s(name) })}
    </button>
  );
}
