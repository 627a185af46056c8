import { useState } from "react";
import type { Cutting } from "../cutting/use-cutting.ts";
import { handOut } from "../sheet/hand-out.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import { useWords } from "../words.ts";
import { writeDrawings } from "../work/pdf.ts";
import { ExchangeFiles } from "./ExchangeFiles.tsx";
import { SheetPreview } from "./SheetPreview.tsx";
import { WrittenDocuments } from "./WrittenDocuments.tsx";

/** The drawing sheets as they are issued, one shown whole. */
export function SheetsBand({
  cutting: { cut, stale, broken },
  name: file,
  document,
}: {
  cutting: Cutting;
  /** Of the project file. */
  name: string;
  document: unknown;
}) {
  const { w, s, reader } = useWords();
  const [writing, setWriting] = useState<"no" | "busy" | "failed">("no");
  const save = async (): Promise<void> => {
    setWriting("busy");
    const content = await writeDrawings({ name: file, document, reader });
    setWriting(content ? "no" : "failed");
    if (content) handOut({ name: `${stemOf(file)}.pdf`, content }, "application/pdf");
  };
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
        <button type="button" className="save-all" disabled={writing === "busy"} onClick={() => void save()}>
          {w(writing === "busy" ? "page.sheets.writing" : "page.sheets.save-all")}
        </button>
        {writing === "failed" && <p role="alert">{w("page.sheets.failed")}</p>}
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
        <ExchangeFiles name={file} document={document} sheet={shown?.name} />
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
            onClick={() => handOut({ name: `${shown.name}.svg`, content: shown.svg }, "image/svg+xml")}
          >
            {w("page.sheets.save")}
          </button>
        </p>
      )}
    </div>
  );
}

/** The file's name without what it ends in. */
function stemOf(name: string): string {
  return name.replace(/\.json$/, "").replace(/\.outerleaf$/, "");
}
