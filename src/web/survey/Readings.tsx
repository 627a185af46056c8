import { useState } from "react";
import type { Source } from "../../project/editing/change.ts";
import { readAgain, setPlace, setReading } from "../../project/editing/readings.ts";
import { sayLength } from "../../text/say.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { PlaceReadings } from "./PlaceReadings.tsx";
import { ReadingField } from "./ReadingField.tsx";

/** The readings of a face on their grid, the top row uppermost, and off it, each to be typed over; and places read again. */
export function Readings({
  source,
  face,
  onEdit,
}: {
  source: Source;
  face: string;
  onEdit: (edit: Edit) => void;
}) {
  const { w, reader } = useWords();
  const grid = source.project.survey?.find((one) => one.face === face);
  const [spot, setSpot] = useState(0);
  if (!grid) return null;
  const { x, y, outward, places = [], again = [] } = grid;
  const rows = y.map((height, row) => ({ height, row })).reverse();
  const set = (column: number, row: number, value: number): void => {
    const change = setReading(source, { face, column, row }, value);
    if (change) onEdit({ ...change, merge: `reading ${face} ${column} ${row}` });
  };
  const spots = [...y.flatMap((up) => x.map((across) => ({ x: across, y: up }))), ...places];
  // Fewer places may be left of an edit that was taken back.
  const chosen = spots[spot] ?? spots[0];
  return (
    <>
      {rows.length > 0 && (
        <table className="survey-readings">
          <caption className="sub">{w("page.survey.readings")}</caption>
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">{w("page.survey.height")}</span>
              </th>
              {x.map((at) => (
                <th scope="col" key={at}>
                  {sayLength(at, reader)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ height, row: at }) => (
              <tr key={height}>
                <th scope="row">{sayLength(height, reader)}</th>
                {x.map((across, i) => (
                  <td key={across}>
                    <ReadingField
                      label={w("page.survey.at", { x: across, y: height })}
                      value={outward[at]?.[i] ?? 0}
                      onChange={(value) => set(i, at, value)}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <PlaceReadings
        places={places}
        onChange={(at, value) => {
          const change = setPlace(source, { face, at }, value);
          if (change) onEdit({ ...change, merge: `reading ${face} place ${at}` });
        }}
      />
      {again.length > 0 && (
        <p className="sub">
          {w("page.survey.repeats", {
            list: again.map((one) => w("page.survey.repeat", { x: one.x, y: one.y, outward: one.outward })),
          })}
        </p>
      )}
      <p className="survey-again">
        <label>
          {w("page.survey.again")}{" "}
          <select
            value={chosen ? spots.indexOf(chosen) : 0}
            onChange={({ currentTarget }) => setSpot(Number(currentTarget.value))}
          >
            {spots.map((one, i) => (
              <option key={`${one.x} ${one.y}`} value={i}>
                {w("page.survey.place", { x: one.x, y: one.y })}
              </option>
            ))}
          </select>
        </label>
        <ReadingField
          label={w("page.survey.second")}
          onChange={(value) => {
            const change = chosen && readAgain(source, { face, x: chosen.x, y: chosen.y, outward: value });
            if (change) onEdit(change);
          }}
        />
      </p>
    </>
  );
}
