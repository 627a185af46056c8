import { sayLength } from "../../text/say.ts";
import { useWords } from "../words.ts";
import { ReadingField } from "./ReadingField.tsx";

/** Readings off the grid, each to be typed over. */
export function PlaceReadings({
  places,
  onChange,
}: {
  places: readonly { readonly x: number; readonly y: number; readonly outward: number }[];
  onChange: (at: number, outward: number) => void;
}) {
  const { w, reader } = useWords();
  if (places.length === 0) return null;
  return (
    <table className="survey-readings survey-places">
      <caption className="sub">{w("page.survey.off-grid")}</caption>
      <thead>
        <tr>
          <th scope="col">x</th>
          <th scope="col">{w("page.survey.height")}</th>
          <th scope="col">{w("page.survey.reading")}</th>
        </tr>
      </thead>
      <tbody>
        {places.map(({ x, y, outward }, at) => (
          <tr key={`${x} ${y}`}>
            <td>{sayLength(x, reader)}</td>
            <td>{sayLength(y, reader)}</td>
            <td>
              <ReadingField
                label={w("page.survey.at", { x, y })}
                value={outward}
                onChange={(value) => onChange(at, value)}
              />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
