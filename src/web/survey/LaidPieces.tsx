import type { Rect } from "../../geometry/rect.ts";
import type { FaceLaidAgain } from "../../site/as-built/lay-again.ts";
import { sayLength } from "../../text/say.ts";
import { useWords } from "../words.ts";

/** What becomes of each piece: before and after, and what it is cut from where it is cut anew. */
export function LaidPieces({ laid, onMark }: { laid: FaceLaidAgain; onMark: (mark: string) => void }) {
  const { w, reader } = useWords();
  const size = ({ x, y }: Rect): string =>
    `${sayLength(x[1] - x[0], reader, 1)} × ${sayLength(y[1] - y[0], reader, 1)}`;
  if (laid.pieces.length === 0) return <p>{w("page.survey.nothing-moves")}</p>;
  return (
    <table className="built-pieces">
      <caption className="sub">
        {w("page.survey.laid", { count: laid.pieces.length, cost: laid.cost, least: laid.least })}
      </caption>
      <thead>
        <tr>
          {["mark", "come", "fate", "before", "after", "from"].map((key) => (
            <th scope="col" key={key} className="word">
              {w(`page.survey.laid-${key}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {laid.pieces.map(({ mark, come, fate, before, after, from }) => (
          <tr key={mark}>
            <th scope="row">
              <button type="button" className="here" onClick={() => onMark(mark)}>
                {mark}
              </button>
            </th>
            <td className="word">{w(`built.come-${come}`)}</td>
            <td className="word">{w(`built.fate-${fate}`)}</td>
            <td>{size(before)}</td>
            <td>{size(after)}</td>
            <td className="word">{from?.stock ?? ""}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
