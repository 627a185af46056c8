import { useState } from "react";
import type { Design } from "../../design.ts";
import type { LeftOut } from "../../output/drawings/drawing-sheets.ts";
import type { Cutting } from "../cutting/use-cutting.ts";
import { PaperFields } from "../edit/fields/PaperFields.tsx";
import { handOut } from "../sheet/hand-out.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { WRITTEN, type WrittenKind, writeDrawings } from "../work/pdf.ts";
import { ExchangeFiles } from "./ExchangeFiles.tsx";
import { IssueForm } from "./IssueForm.tsx";
import { SheetChoice } from "./SheetChoice.tsx";
import { SheetList } from "./SheetList.tsx";
import { SheetPreview } from "./SheetPreview.tsx";
import { WrittenDocuments } from "./WrittenDocuments.tsx";

const NONE: readonly LeftOut[] = [];

/** The drawing sheets as they are issued, one shown whole. */
export function SheetsBand({
  cutting: { cut, stale, broken },
  design,
  name: file,
  document,
  project,
  isOlder,
  onEdit,
}: {
  cutting: Cutting;
  /** The project's id on the server. */
  project: string;
  /** It is an older revision: what goes out is the latest. */
  isOlder: boolean;
  /** Of the project file. */
  name: string;
  document: unknown;
  design: Design;
  onEdit(edit: Edit): void;
}) {
  const { w, reader } = useWords();
  const [writing, setWriting] = useState<WrittenKind>();
  const [failed, setFailed] = useState(false);
  const save = async (what: WrittenKind): Promise<void> => {
    setWriting(what);
    const content = await writeDrawings({ name: file, document, reader, what });
    setWriting(undefined);
    setFailed(content === undefined);
    if (!content) return;
    const stem = stemOf(file);
    if (what === "archive") handOut({ name: `${stem}.zip`, content }, "application/zip");
    else
      handOut(
        { name: what === "drawings" ? `${stem}.pdf` : `${stem}-${what}.pdf`, content },
        "application/pdf",
      );
  };
  const [chosen, setChosen] = useState<string>();
  const sheets = cut?.drawings ?? [];
  const shown = sheets.find(({ name }) => name === chosen) ?? sheets[0];
  return (
    <div className="cutting-band sheets-band" aria-busy={stale}>
      <div className="cutting-parts">
        <h2>{w("page.part.sheets")}</h2>
        <p className="sub" aria-live="polite">
          {broken ? w("page.cutting.broken") : stale ? w("page.sheets.busy") : w("page.sheets.about")}
        </p>
        {failed && <p role="alert">{w("page.sheets.failed")}</p>}
        {!isOlder && <IssueForm {...{ design, document, project, onEdit }} name={file} />}
        <SheetChoice design={design} document={document} onEdit={onEdit} />
        <details className="sheet-choice">
          <summary>{w("page.papers")}</summary>
          <PaperFields source={{ project: design.project, document }} onEdit={onEdit} />
        </details>
        <SheetList
          {...{ design, document, sheets, onEdit }}
          leftOut={cut?.leftOut ?? NONE}
          shown={shown?.name}
          onShow={setChosen}
        />
        <ExchangeFiles name={file} document={document} sheet={shown?.name} />
        <WrittenDocuments />
      </div>
      <Scrolls className="cutting-pictures" label={w("page.part.sheets")}>
        {shown && <SheetPreview key={shown.name} sheet={shown} />}
      </Scrolls>
      <p className="sheet-ways">
        {shown && (
          <button
            type="button"
            className="save-all"
            onClick={() => handOut({ name: `${shown.name}.svg`, content: shown.svg }, "image/svg+xml")}
          >
            {w("page.sheets.save")}
          </button>
        )}
        {WRITTEN.map((what) => (
          <button
            key={what}
            type="button"
            className="save-all"
            disabled={writing !== undefined}
            onClick={() => void save(what)}
          >
            {w(writing === what ? "page.sheets.writing" : `page.sheets.save-${what}`)}
          </button>
        ))}
      </p>
    </div>
  );
}

/** The file's name without what it ends in. */
function stemOf(name: string): string {
  return name.replace(/\.json$/, "").replace(/\.outerleaf$/, "");
}
