import { useState } from "react";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { DrawingSheet } from "../../output/drawings/drawing-sheets.ts";
import { symbolOf } from "../../scene/model.ts";
import { sayNumber } from "../../text/say.ts";
import type { Cutting } from "../cutting/use-cutting.ts";
import { SheetPreview } from "../drawings/SheetPreview.tsx";
import { WindFields } from "../edit/fields/WindFields.tsx";
import { sourceOf } from "../edit/handles/handle.ts";
import { FiguresBehind } from "../figures/FiguresBehind.tsx";
import type { Pick } from "../picks/pick.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { FixingDesign } from "../wind/FixingDesign.tsx";
import { useWords } from "../words.ts";
import { OutcomeMark } from "./OutcomeMark.tsx";

const MOST = 18;

/**
 * What holds, nearest to its limit first: each rule's closest case against the line that it must not cross, and behind the one
 * that is pressed the figures of the reference data.
 */
export function ProofBand({
  design,
  document,
  findings,
  cutting,
  pick,
  onFinding,
  onPick,
  onEdit,
}: {
  design: Design;
  /** The project's JSON, which edits are made to. */
  document: unknown;
  findings: readonly Finding[];
  cutting: Cutting;
  pick: Pick | undefined;
  onFinding: (finding: Finding) => void;
  onPick: (pick: Pick) => void;
  onEdit: (edit: Edit) => void;
}) {
  const { w, reader } = useWords();
  const [shown, setShown] = useState<string>();
  const light = lightSheetOf(cutting, pick);
  const closest = new Map<string, Finding & { readonly ratio: number }>();
  for (const finding of findings) {
    const { code, ratio, outcome } = finding;
    if (ratio === undefined || outcome === "not applicable") continue;
    if ((closest.get(code)?.ratio ?? -1) < ratio) closest.set(code, { ...finding, ratio });
  }
  const rows = [...closest.values()].sort((a, b) => b.ratio - a.ratio).slice(0, MOST);
  const behind = rows.find(({ code }) => code === shown);
  return (
    <div className="proof-band">
      <Scrolls className="proof-closest" label={w("page.proof.closest")}>
        <h2>{w("page.proof.closest")}</h2>
        <p className="sub">{w("page.proof.about")}</p>
        <ul>
          {rows.map((finding) => (
            <li key={finding.code}>
              <button
                type="button"
                className="bar-row"
                aria-pressed={finding.code === shown}
                onClick={() => {
                  setShown(finding.code);
                  onFinding(finding);
                }}
              >
                <OutcomeMark symbol={symbolOf(finding) ?? "pass"} />
                <span className="bar-name">{w(`page.rule.${finding.code}`)}</span>
                <svg className="bar" viewBox="0 0 200 10" preserveAspectRatio="none" aria-hidden="true">
                  <rect className="bar-ground" width={200} height={10} />
                  <rect className="bar-value" width={Math.min(finding.ratio, 2) * 100} height={10} />
                  <line className="bar-limit" x1={100} x2={100} y1={-2} y2={12} />
                </svg>
                <span className="bar-figure">{sayNumber(finding.ratio, 2, reader)}</span>
              </button>
            </li>
          ))}
        </ul>
        <div className="figures-behind">
          {behind ? (
            <FiguresBehind finding={behind} source={sourceOf(design, document)} onEdit={onEdit} />
          ) : (
            <p className="sub">{w("page.figures.press")}</p>
          )}
        </div>
      </Scrolls>
      <Scrolls className="proof-wind" label={w("page.wind-fields")}>
        <h2>{w("page.wind-fields")}</h2>
        <p className="sub">{w("page.wind-fields.about")}</p>
        <WindFields design={design} document={document} onEdit={onEdit} />
        <FixingDesign design={design} onPick={onPick} onEdit={onEdit} />
      </Scrolls>
      <div className="proof-light" aria-busy={cutting.stale}>
        <h2>{w("page.proof.light")}</h2>
        <p className="sub" aria-live="polite">
          {light
            ? w("page.proof.light-about")
            : cutting.stale
              ? w("page.sheets.busy")
              : w("page.proof.no-light")}
        </p>
        {light && <SheetPreview key={light.name} sheet={light} />}
      </div>
    </div>
  );
}

/** The one-page light proof of the picked face's zone, else the first that there is. */
function lightSheetOf({ cut }: Cutting, pick: Pick | undefined): DrawingSheet | undefined {
  const sheets = (cut?.drawings ?? []).filter(({ name }) => name.startsWith("light-"));
  const zone = pick && ("id" in pick ? `light-${pick.face}-${pick.id}` : undefined);
  return (
    sheets.find(({ name }) => name === zone) ??
    sheets.find(({ name }) => pick && name.startsWith(`light-${pick.face}-`)) ??
    sheets[0]
  );
}
