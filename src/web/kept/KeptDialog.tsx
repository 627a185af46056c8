import { useCallback, useEffect, useRef, useState } from "react";
import { fragmentOf } from "../sheet/older.ts";
import type { ProjectState } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { fetchKept, fetchRevisions, type KeptList, type RevisionInfo } from "../work/kept-api.ts";
import { fetchMe, type Me } from "../work/people-api.ts";
import { Devices } from "./Devices.tsx";
import { People } from "./People.tsx";
import { RemoveProject } from "./RemoveProject.tsx";
import { RevisionChanges } from "./RevisionChanges.tsx";
import "./texts.ts";
import { sayTime } from "./time.ts";

/** The projects that the server keeps, and the revisions of the one that is chosen: at first the one on the sheet. */
export function KeptDialog({ project, onClose }: { project: ProjectState; onClose: () => void }) {
  const { w, s, reader } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  const [list, setList] = useState<KeptList | "unreached">();
  const [chosenId, setChosenId] = useState(project.sheeted?.keptAs);
  const [revisions, setRevisions] = useState<readonly RevisionInfo[]>([]);
  const [looked, setLooked] = useState<readonly number[]>([]);
  const [withPeople, setWithPeople] = useState(false);
  const [withDevices, setWithDevices] = useState(false);
  const [me, setMe] = useState<Me>();
  useEffect(() => dialog.current?.showModal(), []);
  // Without a database nobody signs in.
  const hasStore = typeof list === "object" && list.store;
  useEffect(() => {
    if (hasStore) void fetchMe().then((asked) => asked.ok && setMe(asked.answer));
  }, [hasStore]);
  const ask = useCallback(() => void fetchKept().then((found) => setList(found ?? "unreached")), []);
  useEffect(ask, [ask]);

  const projects = list === undefined || list === "unreached" ? [] : list.projects;
  const chosen = projects.find(({ id }) => id === chosenId);
  const older = project.sheeted?.older;
  const steps = older ? [] : (project.sheeted?.history.steps ?? []);
  const isOnSheet = chosen !== undefined && chosen.id === project.sheeted?.keptAs;
  const latest = chosen?.latest.tag;
  useEffect(() => {
    let isLeft = false;
    setRevisions([]);
    setLooked([]);
    if (chosenId === undefined || latest === undefined) return;
    void fetchRevisions(chosenId).then((found) => {
      if (!isLeft) setRevisions(found ?? []);
    });
    return () => {
      isLeft = true;
    };
  }, [chosenId, latest]);

  const before = (at: number): number | undefined => revisions[at + 1]?.number;
  const look = (number: number, open: boolean): void => {
    if (open) setLooked((all) => [...all, number]);
  };
  const leaveWith = (what: () => void): void => {
    what();
    dialog.current?.close();
  };
  return (
    <dialog ref={dialog} className="kept" aria-labelledby="kept-title" onClose={onClose}>
      <div className="kept-head">
        <h2 id="kept-title">{w("page.kept.title")}</h2>
        <button type="button" className="kept-act" onClick={() => dialog.current?.close()}>
          {w("page.kept.close")}
        </button>
      </div>
      {projects.length === 0 && (
        <p role="status">
          {list === undefined
            ? w("page.kept.asking")
            : list === "unreached"
              ? w("page.kept.unreached")
              : w(list.store ? "page.kept.none" : "page.server.no-store")}
        </p>
      )}
      <div className="kept-body">
        <ul className="kept-projects">
          {projects.map(({ id, name, title, latest: { time } }) => (
            <li key={id}>
              <button type="button" aria-pressed={id === chosenId} onClick={() => setChosenId(id)}>
                <b>{title}</b>
                <span className="sub">{name}</span>
                <span className="sub">{sayTime(time, reader)}</span>
              </button>
            </li>
          ))}
        </ul>
        {chosen && (
          <section aria-label={chosen.title}>
            <p className="kept-ways">
              {isOnSheet && !older ? (
                <span className="sub">{w("page.kept.on-sheet")}</span>
              ) : (
                <button
                  type="button"
                  className="kept-act"
                  onClick={() => leaveWith(() => void project.openKept(chosen.id))}
                >
                  {w("page.kept.open")}
                </button>
              )}
              <RemoveProject key={chosen.id} project={chosen} onRemoved={ask} />
            </p>
            <ol className="kept-revisions">
              {revisions.map(({ number, says, time, who }, at) => (
                <li key={number}>
                  <span>{number}</span>
                  <span>
                    {s(says)}
                    <span className="sub">
                      {who === "" ? sayTime(time, reader) : `${who}, ${sayTime(time, reader)}`}
                    </span>
                    {before(at) !== undefined && (
                      <details onToggle={(event) => look(number, event.currentTarget.open)}>
                        <summary aria-label={w("page.kept.changed-in", { number: String(number) })}>
                          {w("page.kept.what-changed")}
                        </summary>
                        {looked.includes(number) && (
                          <RevisionChanges id={chosen.id} from={before(at) ?? 0} to={number} />
                        )}
                      </details>
                    )}
                  </span>
                  {number !== chosen.latest.number && (
                    <a
                      className="kept-act"
                      href={fragmentOf({ id: chosen.id, number })}
                      aria-label={w("page.kept.look-at", { number: String(number) })}
                      onClick={() => dialog.current?.close()}
                    >
                      {w("page.kept.look")}
                    </a>
                  )}
                  {isOnSheet && !older && number !== chosen.latest.number && (
                    <button
                      type="button"
                      className="kept-act"
                      aria-label={w("page.kept.back-to", { number: String(number) })}
                      onClick={() => leaveWith(() => project.backTo(number))}
                    >
                      {w("page.kept.back")}
                    </button>
                  )}
                </li>
              ))}
            </ol>
          </section>
        )}
      </div>
      {steps.length > 1 && (
        <details className="kept-others">
          <summary>{w("page.kept.steps")}</summary>
          <ol className="kept-steps">
            {steps.map((step, nth) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place among the others
              <li key={nth}>
                <span>{nth + 1}</span>
                <span>{s(step.says)}</span>
                {nth !== project.sheeted?.history.at && (
                  <button
                    type="button"
                    className="kept-act"
                    aria-label={w("page.kept.look-at-step", { number: String(nth + 1) })}
                    onClick={() => leaveWith(() => project.lookAt(nth))}
                  >
                    {w("page.kept.look")}
                  </button>
                )}
              </li>
            ))}
          </ol>
        </details>
      )}
      {me?.signedIn && (
        <details className="kept-others" onToggle={(event) => setWithDevices(event.currentTarget.open)}>
          <summary>{w("page.kept.own-devices")}</summary>
          {withDevices && <Devices />}
        </details>
      )}
      <details className="kept-others" onToggle={(event) => setWithPeople(event.currentTarget.open)}>
        <summary>{w("page.kept.people")}</summary>
        {withPeople && <People />}
      </details>
    </dialog>
  );
}
