import { memo, useMemo } from "react";
import type { CutPlan } from "../../cutting/facade/plan.ts";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { spoilAll } from "../../project/editing/spoiled.ts";
import { symbolOf } from "../../scene/model.ts";
import { heading } from "../../scene/views/extent.ts";
import { legendOfProgress } from "../../scene/views/progress.ts";
import { holdChecks } from "../../site/hold-points.ts";
import { foldJournal } from "../../site/journal/fold.ts";
import { correctedReadings } from "../../site/moisture/at-fixing.ts";
import { moistureFindings } from "../../site/moisture/findings.ts";
import { progressOf } from "../../site/progress/counts.ts";
import { forecastOf } from "../../site/progress/forecast.ts";
import { orderOfWork } from "../../site/progress/order-of-work.ts";
import { shortagesOf } from "../../site/progress/shortages.ts";
import { message } from "../../text/message.ts";
import { ScenePicture } from "../drawing/ScenePicture.tsx";
import { CrewFields } from "../edit/fields/CrewFields.tsx";
import { sourceOf } from "../edit/handles/handle.ts";
import { sayTime } from "../kept/time.ts";
import { OutcomeMark } from "../notes/OutcomeMark.tsx";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { entrySaid, placeSaid } from "./entry-said.ts";
import { ProgressTable } from "./ProgressTable.tsx";
import type { SiteNews } from "./use-site-news.ts";
import "./texts.ts";
import "./progress.css";

const STEPS = 8;
const LEGEND = legendOfProgress(1);
const NOTHING: readonly string[] = [];
const NOT_ASKED = foldJournal([]);

/** What the site has told: how far each face is, what can be done next, what was raised, and what boards' moisture means. */
export const SiteBand = memo(function SiteBand({
  design,
  document,
  news: found,
  plan,
  onMark,
  onFinding,
  onEdit,
}: {
  design: Design;
  /** The project's JSON, which edits are made to. */
  document: unknown;
  news: SiteNews | undefined;
  /** What was sawn by. */
  plan: CutPlan | undefined;
  onMark(mark: string): void;
  onFinding(finding: Finding): void;
  onEdit(edit: Edit): void;
}) {
  const { w, s, reader } = useWords();
  const { project, facade } = design;
  const source = useMemo(() => sourceOf(design, document), [design, document]);
  const state = found?.state ?? NOT_ASKED;
  const progress = useMemo(() => progressOf(facade, state), [facade, state]);
  const steps = useMemo(
    () =>
      orderOfWork(facade, state)
        .filter(({ status }) => status === "can" || status === "sign")
        .slice(0, STEPS),
    [facade, state],
  );
  const forecast = useMemo(() => forecastOf(facade, state, new Date().toISOString()), [facade, state]);
  const moisture = useMemo(
    () => moistureFindings(project, correctedReadings({ project, facade }, state.moisture)),
    [project, facade, state],
  );
  const shortages = useMemo(() => plan && shortagesOf(plan, state), [plan, state]);
  const known = project.cutting?.spoiled ?? [];
  const fresh = (shortages?.spoiled ?? []).filter(
    (one) => !known.some((held) => JSON.stringify(held) === JSON.stringify(one)),
  );
  const pointsOf = useMemo(() => {
    const byFace = new Map(
      facade.faces.map((face) => [face.id, [...new Set(holdChecks(face, design).map(({ point }) => point))]]),
    );
    return (face: string): readonly string[] => byFace.get(face) ?? [];
  }, [facade, design]);
  if (!found) return <p className="empty">{w("page.busy")}</p>;
  return (
    <div className="progress-band">
      <Scrolls className="progress-told" label={w("page.progress")}>
        <h2>{w("page.progress")}</h2>
        {found.isAway && <p>{w("page.progress.away")}</p>}
        {!found.isAway && found.told.length === 0 && <p>{w("page.progress.none")}</p>}
        <ProgressTable faces={progress.faces} holdPoints={state.holdPoints} points={pointsOf} />
        <p className="sub">{s(forecast.says)}</p>
        <h3>{w("page.progress.next")}</h3>
        <ul>
          {steps.map(({ face, step, lift, lot, left, status, hold }) => (
            <li key={`${face} ${step} ${lift ?? ""} ${lot}`}>
              {w(`page.progress.step-${status}`, {
                face: heading(face),
                step: message(`drawing.method.${step}`),
                count: left.length,
                hold: hold ?? "",
              })}
            </li>
          ))}
        </ul>
        <h3>{w("page.progress.crews")}</h3>
        <CrewFields source={source} onEdit={onEdit} />
      </Scrolls>
      <Scrolls className="progress-beside" label={w("page.progress.journal")}>
        <ScenePicture scene={LEGEND} picked={NOTHING} />
        <h3>{w("page.progress.raised")}</h3>
        {state.open.length === 0 && <p>{w("page.progress.raised-none")}</p>}
        <ul>
          {state.open.map((entry) => (
            <li key={entry.id}>
              {entry.body.says} <span className="sub">{placeSaid(entry)}</span>
            </li>
          ))}
        </ul>
        {state.short.length > 0 && (
          <>
            <h3>{w("page.progress.short")}</h3>
            <ul>
              {state.short.map(({ id, place, body }) => (
                <li key={id}>
                  <button type="button" className="here" onClick={() => onMark(place.piece)}>
                    {place.piece}
                  </button>{" "}
                  {body.says}
                </li>
              ))}
            </ul>
            {shortages && shortages.again.length > 0 && (
              <p>{w("page.progress.again", { marks: shortages.again })}</p>
            )}
            {fresh.length > 0 && (
              <button
                type="button"
                className="progress-take"
                onClick={() => {
                  const change = spoilAll(project, fresh);
                  if (change) onEdit(change);
                }}
              >
                {w("page.progress.saw", { count: fresh.length })}
              </button>
            )}
          </>
        )}
        {moisture.length > 0 && <h3>{w("page.progress.moisture")}</h3>}
        <ul className="survey-findings">
          {moisture.map((finding) => (
            <li key={`${finding.code} ${finding.where.path ?? ""} ${s(finding.says)}`}>
              <button type="button" className="note-press" onClick={() => onFinding(finding)}>
                <OutcomeMark symbol={symbolOf(finding) ?? "pass"} />
                <span className="note-says">{s(finding.says)}</span>
                {finding.hint && <span className="note-small">{s(finding.hint)}</span>}
              </button>
              {finding.edit && (
                <button
                  type="button"
                  className="progress-take"
                  onClick={() => onEdit({ operations: finding.edit ?? [], says: finding.says })}
                >
                  {w("page.progress.take")}
                </button>
              )}
            </li>
          ))}
        </ul>
        <h3>{w("page.progress.journal")}</h3>
        <ol className="progress-journal" reversed>
          {found.told.toReversed().map(({ number, who, time, entry }) => (
            <li key={number} value={number}>
              {entry.kind === "piece" ? (
                <button type="button" className="here" onClick={() => onMark(entry.place.piece)}>
                  {s(entrySaid(entry))}
                </button>
              ) : (
                s(entrySaid(entry))
              )}{" "}
              <span className="sub">
                {[placeSaid(entry), who || w("page.progress.at-machine"), sayTime(time, reader)]
                  .filter(Boolean)
                  .join(" · ")}
              </span>
            </li>
          ))}
        </ol>
        <p className="caution">{w("page.progress.caution")}</p>
      </Scrolls>
    </div>
  );
});
