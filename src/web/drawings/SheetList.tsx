import type { Design } from "../../design.ts";
import type { DrawingSheet, LeftOut } from "../../output/drawings/drawing-sheets.ts";
import { leaveSheetOut } from "../../project/editing/sheets.ts";
import { message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";

export interface SheetListProps {
  readonly design: Design;
  readonly document: unknown;
  readonly sheets: readonly DrawingSheet[];
  readonly leftOut: readonly LeftOut[];
  /** Of the sheet that is shown. */
  readonly shown: string | undefined;
  onShow(name: string): void;
  onEdit(edit: Edit): void;
}

/** The sheets of the set, each with a tick that takes it out and in again; one that is out keeps its place. */
export function SheetList({
  design: { project },
  document,
  sheets,
  leftOut,
  shown,
  onShow,
  onEdit,
}: SheetListProps) {
  const { w, s } = useWords();
  const out = new Set(project.sheets?.leaveOut);
  const rows: readonly (DrawingSheet | LeftOut)[] = [
    ...leftOut.filter(({ after }) => after === 0),
    ...sheets.flatMap((sheet, at) => [sheet, ...leftOut.filter(({ after }) => after === at + 1)]),
  ];
  const known = new Set(rows.map(({ name }) => name));
  const unknown = [...out].filter((name) => !known.has(name));
  const issued = rows.filter(({ name }) => !out.has(name)).length;
  const set = (name: string, leave: boolean): void =>
    onEdit(leaveSheetOut({ project, document }, name, leave));
  return (
    <ul className="sheet-list">
      {rows.map((row) => {
        const isOut = out.has(row.name);
        const title = s(row.title);
        return (
          <li key={row.name}>
            <input
              type="checkbox"
              checked={!isOut}
              disabled={!isOut && issued === 1}
              aria-label={s(message("page.sheets.in-set", { title, name: row.name }))}
              onChange={() => set(row.name, !isOut)}
            />
            {isOut || !("svg" in row) ? (
              <span className="left-out">
                {title} <span className="sub">{w("page.sheets.left-out")}</span>
              </span>
            ) : (
              <button
                type="button"
                className="cutting-part"
                aria-pressed={row.name === shown}
                onClick={() => onShow(row.name)}
              >
                {title}
              </button>
            )}
          </li>
        );
      })}
      {unknown.map((name) => (
        <li key={name}>
          <input
            type="checkbox"
            checked={false}
            aria-label={s(message("page.sheets.in-set", { title: name, name }))}
            onChange={() => set(name, false)}
          />
          <span className="left-out">
            {name} <span className="sub">{w("page.sheets.left-out-unknown")}</span>
          </span>
        </li>
      ))}
    </ul>
  );
}
