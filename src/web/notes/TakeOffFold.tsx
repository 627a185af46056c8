import { type Pick, pickKey } from "../picks/pick.ts";
import type { TakeOff } from "../picks/take-off.ts";
import { useWords } from "../words.ts";
import { Fold } from "./Fold.tsx";

/** A fold of the steps that take a piece off; pressing a step goes to its piece. It stays as it is from piece to piece. */
export function TakeOffFold({
  takeOff: { sum, steps, cautions },
  pick,
  onPick,
}: {
  takeOff: TakeOff;
  pick: Pick;
  onPick: (pick: Pick) => void;
}) {
  const { w, s } = useWords();
  return (
    <Fold title={w("page.take-off")} sum={s(sum)}>
      <ol>
        {steps.map((step) => (
          <li key={step.mark}>
            <button
              type="button"
              className="take-off-step"
              aria-current={pickKey(step.pick) === pickKey(pick) ? "true" : undefined}
              onClick={() => onPick(step.pick)}
            >
              <span className="take-off-mark">{step.mark}</span> {s(step.kind)}{" "}
              <span className="sub">{s(step.work)}</span>
            </button>
          </li>
        ))}
      </ol>
      {cautions.map((caution) => (
        <p key={caution.key} className="sub">
          {s(caution)}
        </p>
      ))}
      <p className="sub">{w("page.take-off.back")}</p>
    </Fold>
  );
}
