import { setInterval } from "../../project/editing/upkeep.ts";
import type { Project } from "../../project/schema/project.ts";
import { UPKEEP_TASKS } from "../../project/schema/upkeep.ts";
import { heading } from "../../scene/views/extent.ts";
import type { UpkeepLine } from "../../site/upkeep/schedule.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { MonthsField } from "./MonthsField.tsx";

/** A row for each face, a column for each task: how often, and when next. */
export function UpkeepTable({
  project,
  lines,
  usual,
  face,
  onFace,
  onEdit,
}: {
  project: Project;
  lines: readonly UpkeepLine[];
  /** The same where the project gives nothing. */
  usual: readonly UpkeepLine[];
  /** Whose reasons are told. */
  face: string;
  onFace(face: string): void;
  onEdit(edit: Edit): void;
}) {
  const { w } = useWords();
  const faces = [...new Set(lines.map((line) => line.face))];
  return (
    <table className="upkeep-table">
      <caption className="sub">{w("page.upkeep.table")}</caption>
      <thead>
        <tr>
          <th scope="col">{w("upkeep.column.face")}</th>
          {UPKEEP_TASKS.map((task) => (
            <th scope="col" key={task}>
              {w(`upkeep.task.${task}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {faces.map((id) => (
          <tr key={id}>
            <th scope="row">
              <button type="button" className="here" aria-pressed={id === face} onClick={() => onFace(id)}>
                {heading(id)}
              </button>
            </th>
            {UPKEEP_TASKS.map((task) => {
              const line = lines.find((one) => one.face === id && one.task === task);
              const asUsual = usual.find((one) => one.face === id && one.task === task);
              const given = project.upkeep?.every?.find(
                (one) => one.face === id && one.task === task,
              )?.months;
              return (
                <td key={task}>
                  {line && (
                    <>
                      <MonthsField
                        label={w("page.upkeep.months", { face: heading(id), task: w(`upkeep.task.${task}`) })}
                        usual={asUsual?.months}
                        months={given}
                        onChange={(months) => {
                          const change = setInterval(project, { task, face: id }, months);
                          if (change) onEdit(change);
                        }}
                      />
                      <span className="sub">
                        {line.next ?? (line.months === undefined ? w("page.upkeep.unknown") : "")}
                      </span>
                    </>
                  )}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
