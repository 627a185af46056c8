import { memo, useId, useMemo, useState } from "react";
import type { Design } from "../../design.ts";
import { upkeepCalendar } from "../../output/calendar/upkeep-calendar.ts";
import { setHandover } from "../../project/editing/upkeep.ts";
import { UPKEEP_TASKS } from "../../project/schema/upkeep.ts";
import { heading } from "../../scene/views/extent.ts";
import type { EntryOf } from "../../site/journal/entry.ts";
import { type UpkeepDone, upkeepSchedule } from "../../site/upkeep/schedule.ts";
import { TakeOffFold } from "../notes/TakeOffFold.tsx";
import type { Pick } from "../picks/pick.ts";
import { takeOffOf } from "../picks/take-off.ts";
import type { SiteNews } from "../progress/use-site-news.ts";
import { handOut } from "../sheet/hand-out.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { UpkeepTable } from "./UpkeepTable.tsx";
import "./texts.ts";
import "./upkeep.css";

const ISO_DAY = "2027-09-30".length;
const NOTHING_DONE: readonly EntryOf<"upkeep">[] = [];

/** An entry of the journal as the schedule counts it; none where its task is no task of the schedule. */
function doneBy({ told, place, body }: EntryOf<"upkeep">): UpkeepDone[] {
  const task = UPKEEP_TASKS.find((one) => one === body.task);
  return task ? [{ task, face: place.face, day: told.slice(0, ISO_DAY) }] : [];
}

/** What is done to the facade in the years after the hand-over, face by face; and what it takes to replace a part. */
export const UpkeepBand = memo(function UpkeepBand({
  design,
  name,
  news,
  pick,
  onPick,
  onEdit,
}: {
  design: Design;
  /** The file's. */
  name: string;
  /** What was told as done; undefined where nobody could be asked. */
  news: SiteNews | undefined;
  pick: Pick | undefined;
  onPick(pick: Pick): void;
  onEdit(edit: Edit): void;
}) {
  const { w, s, reader } = useWords();
  const id = useId();
  const { project, demands, facade } = design;
  const log = news?.state.upkeep ?? NOTHING_DONE;
  const lines = useMemo(
    () => upkeepSchedule({ project, demands, facade, done: log.flatMap(doneBy) }),
    [project, demands, facade, log],
  );
  const usual = useMemo(() => {
    const { every: _given, ...upkeep } = project.upkeep ?? {};
    return upkeepSchedule({ project: { ...project, upkeep }, demands, facade });
  }, [project, demands, facade]);
  const [chosen, setChosen] = useState<string>();
  const known = (face: string | undefined): face is string => lines.some((line) => line.face === face);
  const face = known(chosen) ? chosen : known(pick?.face) ? pick.face : (lines[0]?.face ?? "");
  const since = project.upkeep?.since;
  const calendar = (): void => {
    const content = upkeepCalendar(lines, { project, reader });
    if (content === undefined) return;
    handOut({ name: `${name.replace(/(\.outerleaf)?\.json$/, "")}-upkeep.ics`, content }, "text/calendar");
  };
  const takeOff = pick && takeOffOf(design, pick);
  return (
    <div className="upkeep-band">
      <Scrolls className="upkeep-told" label={w("page.upkeep")}>
        <h2>{w("page.upkeep")}</h2>
        <p className="upkeep-since">
          <label htmlFor={id}>{w("page.upkeep.since")}</label>
          <input
            id={id}
            type="date"
            value={since ?? ""}
            onChange={({ target: { value } }) => {
              if (value !== "" && value !== since)
                onEdit({ ...setHandover(project, value), merge: "hand-over" });
            }}
          />
          {since !== undefined && (
            <button type="button" className="upkeep-save" onClick={calendar}>
              {w("page.upkeep.calendar")}
            </button>
          )}
        </p>
        {since === undefined && <p>{w("page.upkeep.no-day")}</p>}
        {log.length > 0 && (
          <>
            <h3>{w("page.upkeep.log")}</h3>
            <ul>
              {log.map(({ id: entry, told, place, body }) => (
                <li key={entry}>
                  {[
                    told.slice(0, ISO_DAY),
                    place.face && heading(place.face),
                    body.task,
                    body.finish,
                    body.says,
                  ]
                    .filter(Boolean)
                    .join(" · ")}
                </li>
              ))}
            </ul>
          </>
        )}
        <UpkeepTable {...{ project, lines, usual, face, onEdit }} onFace={setChosen} />
      </Scrolls>
      <Scrolls className="upkeep-why" label={w("page.upkeep.why", { face: heading(face) })}>
        <h3>{w("page.upkeep.why", { face: heading(face) })}</h3>
        <dl>
          {lines
            .filter((line) => line.face === face)
            .map((line) => (
              <div key={`${line.task} ${line.cladding ?? ""}`}>
                <dt>{w(`upkeep.task.${line.task}`)}</dt>
                <dd>
                  {w(`upkeep.do.${line.task}`)} <span className="sub">{s(line.why)}</span>
                </dd>
              </div>
            ))}
        </dl>
        {pick && takeOff ? (
          <TakeOffFold takeOff={takeOff} pick={pick} onPick={onPick} />
        ) : (
          <p>{w("page.upkeep.replace")}</p>
        )}
        <p className="caution">{w("page.upkeep.caution")}</p>
      </Scrolls>
    </div>
  );
});
