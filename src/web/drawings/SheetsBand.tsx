import { useState } from "react";
import type { Cutting } from "../cutting/use-cutting.ts";
import { handOut } from "../sheet/hand-out.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import { useWords } from "../words.ts";
import { SheetPreview } from "./SheetPreview.tsx";
import { WrittenDocuments } from "./WrittenDocuments.tsx";

/** The drawing sheets as they are issued, one shown whole. */
export function SheetsBand({ cutting: { cut, stale, broken } }: { cutting: Cutting }) {
  const { w, s } = useWords();
  const [chosen, setChosen] = useState<string>();
  const sheets = cut?.drawings ?? [];
  const shown = sheets.find(({ name }) => name === chosen) ?? sheets[0];
  return (
    <div className="cutting-band" aria-busy={stale}>
      <div className="cutting-parts">
        <h2>{w("page.part.sheets")}</h2>
        <p className="sub" aria-live="polite">
          {broken ? w("page.cutting.broken") : stale ? w("page.sheets.busy") : w("page.sheets.about")}
        </p>
        <ul>
          {sheets.map(({ name, title }) => (
            <li key={name}>
              <button
                type="button"
                className="cutting-part"
                aria-pressed={name === shown?.name}
                onClick={() => setChosen(name)}
              >
                {s(title)}
              </button>
            </li>
          ))}
        </ul>
        <WrittenDocuments />
      </div>
      <Scrolls className="cutting-pictures" label={w("page.part.sheets")}>
        {shown && <SheetPreview key={shown.name} sheet={shown} />}
      </Scrolls>
      {shown && (
        <p className="sheet-ways">
          <button
            type="button"
            className="fold"
            onClick={() => handOut({ name: `${shown.name}.svg`, text: shown.svg }, "image/svg+xml")}
          >
            {w("page.sheets.save")}
          </button>
        </p>
      )}
    </div>
  );
}
