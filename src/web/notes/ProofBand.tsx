import type { Finding } from "../../findings/finding.ts";
import { symbolOf } from "../../scene/model.ts";
import { sayNumber } from "../../text/say.ts";
import { useWords } from "../words.ts";
import { OutcomeMark } from "./OutcomeMark.tsx";

const MOST = 18;

/** What holds, nearest to its limit first: each rule's closest case against the line that it must not cross. */
export function ProofBand({
  findings,
  onFinding,
}: {
  findings: readonly Finding[];
  onFinding: (finding: Finding) => void;
}) {
  const { w, reader } = useWords();
  const closest = new Map<string, Finding & { readonly ratio: number }>();
  for (const finding of findings) {
    const { code, ratio, outcome } = finding;
    if (ratio === undefined || outcome === "not applicable") continue;
    if ((closest.get(code)?.ratio ?? -1) < ratio) closest.set(code, { ...finding, ratio });
  }
  const rows = [...closest.values()].sort((a, b) => b.ratio - a.ratio).slice(0, MOST);
  return (
    <div className="proof-band">
      <h2>{w("page.proof.closest")}</h2>
      <p className="sub">{w("page.proof.about")}</p>
      <ul>
        {rows.map((finding) => (
          <li key={finding.code}>
            <button type="button" className="bar-row" onClick={() => onFinding(finding)}>
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
    </div>
  );
}
