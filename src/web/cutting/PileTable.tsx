import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Change } from "../../project/editing/change.ts";
import { gradeBoard } from "../../project/editing/grade.ts";
import { addPictures, takePictureAway } from "../../project/editing/pictures.ts";
import { spoil } from "../../project/editing/spoiled.ts";
import type { Project } from "../../project/schema/project.ts";
import { sayLength } from "../../text/say.ts";
import { BoardGrade, useGradeHelp } from "../edit/fields/BoardGrade.tsx";
import { Pictures } from "../pictures/Pictures.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { BoardStrip } from "./BoardStrip.tsx";
import { SpoilPress } from "./SpoilPress.tsx";

/** The pile, board by board: its sound measure, what is wrong with it, and what is ripped from it or left, or that it is spoiled. */
export function PileTable({
  project,
  pile,
  plan,
  waits,
  onEdit,
}: {
  project: Project;
  pile: NonNullable<Project["pile"]>;
  plan: CutPlan | undefined;
  /** The plan is being made again. */
  waits: boolean;
  onEdit(edit: Edit): void;
}) {
  const { w, reader } = useWords();
  const length = (mm: number): string => sayLength(mm, reader);
  const ripped = new Map(plan?.rips?.ripped.map((one) => [one.boardId, one]));
  const rotten = new Set(
    project.cutting?.spoiled?.flatMap((one) => (one.kind === "board" ? [one.board] : [])),
  );
  const gives = (id: string): string => {
    if (rotten.has(id)) return w("page.pile.spoiled");
    const board = ripped.get(id);
    if (!board) return w("page.pile.left");
    return w("page.pile.rips", {
      widths: board.strips.map(({ across }) => length(across.to - across.from)),
    });
  };
  const help = useGradeHelp();
  const longest = Math.max(...pile.boards.map((board) => board.length));
  const change = (made: Change | undefined): void => {
    if (made) onEdit(made);
  };
  return (
    <div className="order-tables">
      {help.note}
      <table className="pile-table">
        <thead>
          <tr>
            {["board", "lot", "board-length", "board-width", "board-thickness"].map((key) => (
              <th scope="col" key={key}>
                {w(`schedule.column.${key}`)}
              </th>
            ))}
            <th scope="col" className="word">
              {w("schedule.column.board-grade")} {help.button}
            </th>
            <th scope="col" className="word">
              {w("page.pile.defects")}
            </th>
            <th scope="col" className="word">
              {w("page.pile.gives")}
            </th>
            <th scope="col" className="word">
              {w("page.pile.pictures")}
            </th>
            <th scope="col">
              <span className="unseen">{w("page.pile.spoil")}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {pile.boards.map((board) => {
            const {
              id,
              lot,
              length: long,
              width,
              thickness,
              grade,
              face,
              defects,
              wane,
              pictures = [],
            } = board;
            return (
              <tr key={id}>
                <th scope="row">{id}</th>
                <td className="word">{lot}</td>
                <td>{length(long)}</td>
                <td>{length(width)}</td>
                <td>{length(thickness)}</td>
                <td className="word">
                  <BoardGrade
                    board={id}
                    grade={grade}
                    onGrade={(typed) => change(gradeBoard(project, id, typed))}
                  />
                  {grade === undefined && face}
                </td>
                <td className="word">
                  <BoardStrip board={board} longest={longest} />
                  {[
                    ...defects.map(({ kind, from, to }) => w("page.pile.defect", { kind, from, to })),
                    ...(wane ? [w("page.pile.wane", { width: wane.width })] : []),
                  ].join("; ")}
                </td>
                <td className="word">{gives(id)}</td>
                <td className="word">
                  <Pictures
                    of={w("page.spoiled.board", { board: id })}
                    names={pictures}
                    onAdd={(names) => change(addPictures(project, id, names))}
                    onTakeAway={(name) => change(takePictureAway(project, id, name))}
                  />
                </td>
                <td className="word">
                  {!rotten.has(id) && (
                    <SpoilPress
                      name={id}
                      waits={waits}
                      onPress={() => onEdit(spoil(project, { kind: "board", board: id }))}
                    />
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
