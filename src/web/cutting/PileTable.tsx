import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Project } from "../../project/schema/project.ts";
import { sayLength } from "../../text/say.ts";
import { useWords } from "../words.ts";

/** The pile, board by board: its sound measure, what is wrong with it, and what is ripped from it or left. */
export function PileTable({ pile, plan }: { pile: NonNullable<Project["pile"]>; plan: CutPlan | undefined }) {
  const { w, reader } = useWords();
  const length = (mm: number): string => sayLength(mm, reader);
  const ripped = new Map(plan?.rips?.ripped.map((one) => [one.boardId, one]));
  return (
    <div className="order-tables">
      <table>
        <thead>
          <tr>
            {["board", "lot", "board-length", "board-width", "board-thickness"].map((key) => (
              <th scope="col" key={key}>
                {w(`schedule.column.${key}`)}
              </th>
            ))}
            <th scope="col" className="word">
              {w("page.pile.defects")}
            </th>
            <th scope="col" className="word">
              {w("page.pile.gives")}
            </th>
          </tr>
        </thead>
        <tbody>
          {pile.boards.map(({ id, lot, length: long, width, thickness, defects, wane }) => (
            <tr key={id}>
              <th scope="row">{id}</th>
              <td className="word">{lot}</td>
              <td>{length(long)}</td>
              <td>{length(width)}</td>
              <td>{length(thickness)}</td>
              <td className="word">
                {[
                  ...defects.map(({ kind, from, to }) => w("page.pile.defect", { kind, from, to })),
                  ...(wane ? [w("page.pile.wane", { width: wane.width })] : []),
                ].join("; ")}
              </td>
              <td className="word">
                {ripped.has(id)
                  ? w("page.pile.rips", {
                      widths: (ripped.get(id)?.strips ?? []).map(({ across }) =>
                        length(across.to - across.from),
                      ),
                    })
                  : w("page.pile.left")}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
