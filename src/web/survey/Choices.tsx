import { useMemo } from "react";
import { choicesAt } from "../../site/as-built/choices.ts";
import type { AskedFace } from "../../site/as-built/question.ts";
import { sayNumber } from "../../text/say.ts";
import { useWords } from "../words.ts";

/** For each side of an opening that is not as drawn, what can be done and what it costs. */
export function Choices({ asked }: { asked: AskedFace }) {
  const { w, reader } = useWords();
  const sides = useMemo(() => asked.face.openings.flatMap(({ id }) => choicesAt(asked, id)), [asked]);
  if (sides.length === 0) return null;
  return (
    <ul className="survey-choices">
      {sides.map(({ opening, side, drawn, measured, choices }) => (
        <li key={`${opening} ${side}`}>
          {w("page.survey.side", { opening, side: w(`built.side-${side}`), drawn, measured })}
          <ul>
            {choices.map(({ kind, laid }) => (
              <li key={kind}>
                {laid
                  ? w("page.survey.choice", {
                      choice: w(`built.choice-${kind}`),
                      count: laid.pieces.length,
                      cost: laid.cost,
                      share: sayNumber(laid.share * 100, 0, reader),
                    })
                  : w("page.survey.no-choice", { choice: w(`built.choice-${kind}`) })}
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}
