import type { Taken } from "../../../project/intake/taken.ts";
import { symbolOf } from "../../../scene/model.ts";
import { OutcomeMark } from "../../notes/OutcomeMark.tsx";
import { useWords } from "../../words.ts";

/** As many findings are told; the rest is counted. */
const MOST = 60;

/** What would be otherwise, or what keeps a file from being taken in. */
export function TakenTold({
  taken,
}: {
  taken: Pick<Taken, "ok" | "findings"> & { readonly tells?: Extract<Taken, { ok: true }>["tells"] };
}) {
  const { w, s } = useWords();
  const { tells = [], findings } = taken;
  return (
    <div className="intake-whole" role={taken.ok ? "status" : "alert"}>
      <p className="intake-head">{w(taken.ok ? "page.intake.changes" : "page.intake.refused")}</p>
      <ul className="intake-tells">
        {findings.slice(0, MOST).map((finding) => {
          const says = s(finding.says);
          return (
            <li key={`${finding.code} ${says}`}>
              <OutcomeMark symbol={symbolOf(finding) ?? "attention"} />
              <span>
                {says}
                {finding.hint && <span className="hint"> {s(finding.hint)}</span>}
              </span>
            </li>
          );
        })}
        {findings.length > MOST && <li>{w("page.intake.more", { count: findings.length - MOST })}</li>}
        {tells.map((tell) => {
          const says = s(tell);
          return <li key={says}>{says}</li>;
        })}
      </ul>
    </div>
  );
}
