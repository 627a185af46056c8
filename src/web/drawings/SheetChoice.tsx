import type { Design } from "../../design.ts";
import { setSheetOrder } from "../../project/editing/sheets.ts";
import { SHEET_KINDS, type SheetKind } from "../../project/schema/sheets.ts";
import { message } from "../../text/message.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";

/** Which kinds of sheets are issued, in which order: ticked and moved one by one, written into the file. */
export function SheetChoice({
  design,
  document,
  onEdit,
}: {
  design: Design;
  document: unknown;
  onEdit(edit: Edit): void;
}) {
  const { w, s } = useWords();
  const { project } = design;
  const order = project.sheets?.order ?? [...SHEET_KINDS];
  const others = SHEET_KINDS.filter((kind) => !order.includes(kind));
  const set = (next: readonly SheetKind[]): void => {
    if (next.length > 0) onEdit(setSheetOrder({ project, document }, next));
  };
  const nameOf = (kind: SheetKind): string => w(`drawing.kind.${kind}`);
  const move = (at: number, by: -1 | 1): void => {
    const next = [...order];
    const [moved] = next.splice(at, 1);
    if (moved) next.splice(at + by, 0, moved);
    set(next);
  };
  return (
    <details className="sheet-choice">
      <summary>{w("page.sheets.choose")}</summary>
      <ol>
        {order.map((kind, at) => (
          <li key={kind}>
            <label>
              <input
                type="checkbox"
                checked
                disabled={order.length === 1}
                onChange={() => set(order.filter((one) => one !== kind))}
              />{" "}
              {nameOf(kind)}
            </label>
            <span>
              <button
                type="button"
                disabled={at === 0}
                aria-label={s(message("page.sheets.earlier", { kind: nameOf(kind) }))}
                onClick={() => move(at, -1)}
              >
                ↑
              </button>
              <button
                type="button"
                disabled={at === order.length - 1}
                aria-label={s(message("page.sheets.later", { kind: nameOf(kind) }))}
                onClick={() => move(at, 1)}
              >
                ↓
              </button>
            </span>
          </li>
        ))}
        {others.map((kind) => (
          <li key={kind}>
            <label>
              <input type="checkbox" checked={false} onChange={() => set([...order, kind])} /> {nameOf(kind)}
            </label>
          </li>
        ))}
      </ol>
    </details>
  );
}
