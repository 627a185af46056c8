import { useState } from "react";
import { message } from "../../text/message.ts";
import type { Older, Restored } from "../sheet/older.ts";
import { useWords } from "../words.ts";
import { sayTime } from "./time.ts";
import "./texts.ts";
import "./older.css";

/** Says over the sheet that it is an older state and whose, and leads back, or makes it the current one. */
export function OlderBanner({
  older: { from, number, says, time, who },
  onBack,
  onRestore,
}: {
  older: Older;
  onBack: () => void;
  onRestore: () => Promise<Restored>;
}) {
  const { w, reader } = useWords();
  const [failed, setFailed] = useState<string>();
  const [busy, setBusy] = useState(false);
  const restore = async (): Promise<void> => {
    setBusy(true);
    const done = await onRestore();
    setBusy(false);
    if (done.kind === "failed") setFailed(done.says ?? w("page.kept.unreached"));
  };
  const values = {
    number: String(number),
    says,
    who: who === "" ? message("page.kept.here") : who,
    time: time === undefined ? "" : sayTime(time, reader),
  };
  return (
    <section className="older" aria-label={w("page.kept.older")}>
      <p role="status">
        <b>{w(`page.kept.older-${from}`, values)}</b> {w("page.kept.older-only")}
      </p>
      <p className="kept-ways">
        <button type="button" className="kept-act" onClick={onBack}>
          {w("page.kept.older-back")}
        </button>
        <button type="button" className="kept-act" disabled={busy} onClick={() => void restore()}>
          {w("page.kept.older-restore")}
        </button>
      </p>
      {failed !== undefined && <p role="alert">{failed}</p>}
    </section>
  );
}
