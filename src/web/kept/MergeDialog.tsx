import { useEffect, useMemo, useRef, useState } from "react";
import { type Conflict, mergeDocuments, type Side, takenFrom, type Versions } from "../../project/merge.ts";
import { message } from "../../text/message.ts";
import type { ProjectState } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import type { KeptState } from "../work/keeper.ts";
import { ChangeList } from "./ChangeList.tsx";
import { sayPlace, sayValue } from "./said.ts";
import "./texts.ts";
import { sayTime } from "./time.ts";

type Conflicted = Extract<KeptState, { kind: "conflict" }>;

export interface MergeDialogProps {
  readonly project: ProjectState;
  readonly kept: Conflicted;
  readonly onClose: () => void;
}

/** Two edits of one project: what the other changed, what both changed, and the ways to go on. */
export function MergeDialog({ project, kept, onClose }: MergeDialogProps) {
  const { w, reader } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  const [versions, setVersions] = useState<Versions | "asking" | "none">("asking");
  const [chosen, setChosen] = useState<ReadonlyMap<string, Side>>(new Map());
  const [failed, setFailed] = useState<"failed" | "refused">();
  const { mine, other } = kept;
  useEffect(() => dialog.current?.showModal(), []);
  const { versions: ask } = project;
  const tag = other?.tag;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision came between
  useEffect(() => {
    let isLeft = false;
    setChosen(new Map());
    void ask().then((found) => {
      if (!isLeft) setVersions(found ?? "none");
    });
    return () => {
      isLeft = true;
    };
  }, [ask, tag]);
  const merged = useMemo(
    () => (typeof versions === "string" ? undefined : mergeDocuments(versions, chosen)),
    [versions, chosen],
  );
  const taken = useMemo(
    () => (merged && typeof versions !== "string" ? takenFrom(versions, merged.conflicts) : []),
    [merged, versions],
  );
  const close = (): void => {
    dialog.current?.close();
    // A conflict that has ended takes the dialog off the page before it could tell.
    onClose();
  };
  const choose = (key: string, side: Side): void => setChosen((before) => new Map(before).set(key, side));
  const join = async (): Promise<void> => {
    if (!merged || !other) return;
    const says = message("page.edit.merged", { number: String(other.number), says: mine });
    const done = await project.merge({ document: merged.document, says });
    if (done === "kept") close();
    // Where another one came between, what differs is asked for anew.
    else setFailed(done === "conflict" ? undefined : done);
  };
  const left = merged?.conflicts.filter(({ key }) => !chosen.has(key)).length ?? 0;
  const leaveBy = (way: "mine" | "other" | "both"): void => {
    project.settle(way);
    close();
  };
  return (
    <dialog ref={dialog} className="kept" aria-labelledby="merge-title" onClose={onClose}>
      <div className="kept-head">
        <h2 id="merge-title">{w("page.kept.merge-title")}</h2>
        <button type="button" className="kept-act" onClick={close}>
          {w("page.kept.close")}
        </button>
      </div>
      {other && (
        <p>
          {w("page.kept.merge-about", {
            number: String(other.number),
            who: other.who || message("page.kept.here"),
            time: sayTime(other.time, reader),
            other: other.says,
            mine,
          })}
        </p>
      )}
      {versions === "asking" && <p role="status">{w("page.kept.asking")}</p>}
      {versions === "none" && <p role="status">{w("page.kept.no-base")}</p>}
      {merged && (
        <>
          <h3>{w("page.kept.taken")}</h3>
          <ChangeList changes={taken} />
          <h3>{w("page.kept.both-changed", { count: merged.conflicts.length })}</h3>
          {merged.conflicts.map((conflict) => (
            <Choice
              key={conflict.key}
              conflict={conflict}
              side={chosen.get(conflict.key)}
              onChoose={choose}
            />
          ))}
        </>
      )}
      {failed && <p role="alert">{w(`page.kept.merge-${failed}`)}</p>}
      <p className="kept-ways">
        <button type="button" className="kept-act" disabled={!merged || left > 0} onClick={() => void join()}>
          {w("page.kept.join")}
        </button>
        {left > 0 && <span className="sub">{w("page.kept.to-choose", { count: left })}</span>}
        <button type="button" className="kept-act" onClick={() => leaveBy("both")}>
          {w("page.kept.keep-both")}
        </button>
      </p>
    </dialog>
  );
}

function Choice({
  conflict,
  side,
  onChoose,
}: {
  conflict: Conflict;
  side: Side | undefined;
  onChoose: (key: string, side: Side) => void;
}) {
  const words = useWords();
  const { w, s } = words;
  const { key, place, kind } = conflict;
  const said = (value: unknown): string =>
    kind === "order" ? (value as readonly string[]).join(", ") : sayValue(value, place, words);
  return (
    <fieldset className="kept-conflict">
      <legend>
        {sayPlace(place, words)}{" "}
        <span className="sub">{s(message("page.kept.was", { was: said(conflict.base) }))}</span>
      </legend>
      {(["mine", "other"] as const).map((one) => (
        <label key={one}>
          <input type="radio" name={key} checked={side === one} onChange={() => onChoose(key, one)} />
          <span>{w(`page.kept.side-${one}`, { value: said(conflict[one]) })}</span>
        </label>
      ))}
    </fieldset>
  );
}
