import { setEnd } from "../../project/editing/as-built.ts";
import type { Source } from "../../project/editing/change.ts";
import { faceLength } from "../../setout/corners.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { ReadingField } from "./ReadingField.tsx";

const ENDS = ["left", "right"] as const;

/** Where the sheathing of a face ends, as measured: what stands round its corners moves with it when it is laid again. */
export function EndFields({
  source,
  face,
  onEdit,
}: {
  source: Source;
  face: string;
  onEdit: (edit: Edit) => void;
}) {
  const { w } = useWords();
  const { faces, asBuilt } = source.project;
  const wall = faces.find(({ id }) => id === face);
  if (!wall) return null;
  const drawn = { left: 0, right: faceLength(wall) };
  return (
    <table className="built-measures">
      <caption className="sub">{w("page.survey.ends-how")}</caption>
      <thead>
        <tr>
          {ENDS.map((end) => (
            <th scope="col" key={end}>
              {w(`page.survey.end-${end}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        <tr>
          {ENDS.map((end) => {
            const own = asBuilt?.ends?.find((one) => one.face === face && one.end === end)?.at;
            return (
              <td key={end}>
                <ReadingField
                  label={w("page.survey.end", { what: w(`page.survey.end-${end}`) })}
                  value={own ?? drawn[end]}
                  isFaint={own === undefined}
                  onChange={(at) => {
                    const edit = setEnd(source, { face, end }, at);
                    if (edit) onEdit({ ...edit, merge: `measured ${face} ${end}`, made: source.document });
                  }}
                />
              </td>
            );
          })}
        </tr>
      </tbody>
    </table>
  );
}
