import { useState } from "react";
import type { ExchangeWish } from "../../output/exchange-files.ts";
import { handOut } from "../sheet/hand-out.ts";
import { useWords } from "../words.ts";
import { writeExchange } from "../work/exchange.ts";

const WISHES = [
  "workbook",
  "model",
  "scene",
  "drawings",
  "tables",
  "set-out-json",
  "findings-json",
  "cut-json",
  "takeoff-json",
] as const;

/** Files for other programs, each written when it is pressed. */
export function ExchangeFiles({
  name: file,
  document,
  sheet,
}: {
  /** Of the project file. */
  name: string;
  document: unknown;
  /** The drawing that is shown. */
  sheet: string | undefined;
}) {
  const { w, reader } = useWords();
  const [state, setState] = useState<{ readonly kind: ExchangeWish["kind"]; readonly failed: boolean }>();
  const busy = state !== undefined && !state.failed;
  const save = async (wish: ExchangeWish): Promise<void> => {
    setState({ kind: wish.kind, failed: false });
    const made = await writeExchange({ name: file, document, reader, wish });
    setState(made ? undefined : { kind: wish.kind, failed: true });
    if (made) handOut({ name: made.name, content: made.bytes }, "application/octet-stream");
  };
  const wishes: readonly ExchangeWish[] = [
    ...(sheet === undefined ? [] : [{ kind: "sheet", name: sheet } as const]),
    ...WISHES.map((kind) => ({ kind })),
  ];
  return (
    <>
      <h3>{w("page.exchange")}</h3>
      <ul className="written">
        {wishes.map((wish) => (
          <li key={wish.kind}>
            <button type="button" className="save-all" disabled={busy} onClick={() => void save(wish)}>
              {w(busy && state.kind === wish.kind ? "page.sheets.writing" : `page.exchange.${wish.kind}`)}
            </button>
          </li>
        ))}
      </ul>
      {state?.failed && (
        <p role="alert">{w(state.kind === "sheet" ? "page.exchange.no-sheet" : "page.sheets.failed")}</p>
      )}
    </>
  );
}
