import { lazy, Suspense, useState } from "react";
import type { ProjectState } from "../sheet/use-project.ts";
import { useWords, type Words } from "../words.ts";
import type { KeptState } from "../work/keeper.ts";
import { sayTime } from "./time.ts";

const MergeDialog = lazy(async () => ({ default: (await import("./MergeDialog.tsx")).MergeDialog }));
const KeptDialog = lazy(async () => ({ default: (await import("./KeptDialog.tsx")).KeptDialog }));

/** Of the title block: where the edits are kept, what to do after another window went on, and the way to the list. */
export function KeptField({ project }: { project: ProjectState }) {
  const words = useWords();
  const { w } = words;
  const [isOpen, setOpen] = useState(false);
  const [merging, setMerging] = useState(false);
  const { kept } = project;
  return (
    <div className="field field-kept">
      <span className="label">{w("page.block.kept")}</span>
      <span className="value">
        <span className={kept.kind === "conflict" ? "kept-state unsaved" : "kept-state"} role="status">
          {project.sheeted?.older ? w("page.kept.older") : says(kept, words)}
        </span>
        <button type="button" className="kept-act" onClick={() => setOpen(true)}>
          {w("page.kept.list")}
        </button>
      </span>
      {kept.kind === "conflict" && (
        <span className="kept-ways">
          {kept.other && (
            <button type="button" className="kept-act" onClick={() => setMerging(true)}>
              {w("page.kept.differs")}
            </button>
          )}
          <button type="button" className="kept-act" onClick={() => project.settle("mine")}>
            {w("page.kept.mine")}
          </button>
          {kept.other && (
            <button type="button" className="kept-act" onClick={() => project.settle("other")}>
              {w("page.kept.other")}
            </button>
          )}
        </span>
      )}
      <Suspense>
        {isOpen && <KeptDialog project={project} onClose={() => setOpen(false)} />}
        {merging && kept.kind === "conflict" && (
          <MergeDialog {...{ project, kept }} onClose={() => setMerging(false)} />
        )}
      </Suspense>
    </div>
  );
}

function says(kept: KeptState, { w, reader }: Words): string {
  switch (kept.kind) {
    case "server":
      return w("page.kept.server", {
        number: String(kept.revision.number),
        time: sayTime(kept.revision.time, reader),
      });
    case "conflict":
      return kept.other
        ? w("page.kept.conflict", {
            number: String(kept.other.number),
            other: kept.other.says,
            mine: kept.mine,
          })
        : w("page.kept.gone", { mine: kept.mine });
    default:
      return w(`page.kept.${kept.kind}`);
  }
}
