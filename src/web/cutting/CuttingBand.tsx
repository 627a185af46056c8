import { lazy, memo, Suspense, useMemo, useState } from "react";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { spoil } from "../../project/editing/spoiled.ts";
import type { Spoiled } from "../../project/schema/spoiled.ts";
import { symbolOf } from "../../scene/model.ts";
import { ScenePicture } from "../drawing/ScenePicture.tsx";
import { SawFields } from "../edit/fields/SawFields.tsx";
import { sourceOf } from "../edit/handles/handle.ts";
import { OutcomeMark } from "../notes/OutcomeMark.tsx";
import type { Pick } from "../picks/pick.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { Closing } from "./Closing.tsx";
import { CuttingState } from "./CuttingState.tsx";
import { cutParts } from "./cut-parts.ts";
import { PileTable } from "./PileTable.tsx";
import { RipWidths } from "./RipWidths.tsx";
import { SearchOn } from "./SearchOn.tsx";
import { SpoiledStock } from "./SpoiledStock.tsx";
import { SpoilPress } from "./SpoilPress.tsx";
import type { Cutting } from "./use-cutting.ts";

export interface CuttingBandProps {
  readonly cutting: Cutting;
  readonly design: Design;
  readonly document: unknown;
  readonly pick: Pick | undefined;
  onMark(mark: string): void;
  /** The piece under the pointer, to be shown on the facade. */
  onOver(mark: string | undefined): void;
  onFinding(finding: Finding): void;
  onEdit(edit: Edit): void;
}

const TakePile = lazy(async () => ({ default: (await import("../edit/intake/TakePile.tsx")).TakePile }));

/** Plans on the way from which on they are plotted: most cuttings are done before anyone could look. */
const SEEN = 3;

/** No part of a plan is called so. */
const PILE = "the pile itself";

/** What is sawn from which sheet, length and board, with the cuts in their order. */
export const CuttingBand = memo(function CuttingBand({
  cutting,
  design,
  document,
  pick,
  onMark,
  onOver,
  onFinding,
  onEdit,
}: CuttingBandProps) {
  const { w, s } = useWords();
  const { cut, stale, closing } = cutting;
  // A better plan may come that saws other stock.
  const waits = stale || closing !== undefined;
  const { pile } = design.project;
  const parts = useMemo(() => (cut?.plan ? cutParts(cut.plan) : []), [cut]);
  const source = useMemo(() => sourceOf(design, document), [design, document]);
  const [chosen, setChosen] = useState<string>();
  const picked = pick?.kind === "piece" ? pick.id : undefined;
  const shown =
    parts.find(({ key }) => key === chosen) ??
    parts.find(({ marks }) => picked !== undefined && marks.has(picked)) ??
    parts[0];
  const showsPile = chosen === PILE;
  const pictures = useMemo(() => (showsPile ? [] : (shown?.pictures() ?? [])), [shown, showsPile]);
  const spoilt = (one: Spoiled): void => onEdit(spoil(design.project, one));
  const marks = useMemo(() => (picked === undefined ? [] : [picked]), [picked]);
  return (
    <div className="cutting-band" aria-busy={stale}>
      <div className="cutting-parts">
        <h2>{w("page.cutting")}</h2>
        <CuttingState {...{ cutting }} currency={design.project.stock.currency}>
          {w("page.cutting.about")}
        </CuttingState>
        {closing && closing.length >= SEEN && <Closing tries={closing} />}
        {cut?.plan && <SearchOn {...{ design, document, waits, onEdit }} />}
        <details className="saw-limits">
          <summary>{w("page.saw")}</summary>
          <SawFields source={source} onEdit={onEdit} />
        </details>
        <SpoiledStock project={design.project} plan={cut?.plan} stale={waits} onEdit={onEdit} />
        <ul>
          {parts.map(({ key, name, count }) => (
            <li key={key}>
              <button
                type="button"
                className="cutting-part"
                aria-pressed={!showsPile && key === shown?.key}
                onClick={() => setChosen(key)}
              >
                <span>{s(name)}</span> <span className="figure">{count}</span>
              </button>
            </li>
          ))}
          <li>
            <button
              type="button"
              className="cutting-part"
              aria-pressed={showsPile}
              onClick={() => setChosen(PILE)}
            >
              <span>{w("page.pile")}</span> <span className="figure">{pile?.boards.length ?? 0}</span>
            </button>
          </li>
        </ul>
        <ul className="cutting-says">
          {(cut?.findings ?? []).map((finding) => {
            const says = s(finding.says);
            return (
              <li key={`${finding.code} ${says}`}>
                <button type="button" className="here" onClick={() => onFinding(finding)}>
                  <OutcomeMark symbol={symbolOf(finding) ?? "pass"} />
                  <span>{says}</span>
                </button>
              </li>
            );
          })}
        </ul>
      </div>
      <Scrolls className="cutting-pictures" label={w("page.cutting")}>
        {showsPile && (
          <div className="pile-side">
            {pile && <RipWidths design={design} onEdit={onEdit} />}
            {pile && (
              <PileTable
                project={design.project}
                pile={pile}
                plan={cut?.plan}
                waits={waits}
                onEdit={onEdit}
              />
            )}
            <Suspense>
              <TakePile source={source} onEdit={onEdit} />
            </Suspense>
          </div>
        )}
        {!showsPile && shown?.settings !== undefined && (
          <p className="sub cut-settings">{w("page.cutting.settings", { count: shown.settings })}</p>
        )}
        {pictures.map(({ scene, units }) => (
          <div key={scene.id} className="cut-picture">
            <ScenePicture scene={scene} picked={marks} onMark={onMark} onOver={onOver} />
            {units.map(({ name, spoiled }) => (
              <SpoilPress key={s(name)} name={name} waits={waits} onPress={() => spoilt(spoiled)} />
            ))}
          </div>
        ))}
      </Scrolls>
      <p className="caution">{w("page.cutting.caution")}</p>
    </div>
  );
});
