import type { Finding } from "../../findings/finding.ts";
import { sayNumber } from "../../text/say.ts";
import { useWords } from "../words.ts";
import { sourceText } from "./source.ts";

/** Everything that is needed to check a finding by hand. */
export function WorkingOf({ finding }: { finding: Finding }) {
  const words = useWords();
  const { w, s, reader } = words;
  const { working, hint, where, limit, demand, unit, source } = finding;
  const figure = (value: number): string => sayNumber(Number(value.toPrecision(6)), undefined, reader);
  return (
    <div className="working">
      {hint && (
        <p className="hint">
          <b>{w("page.mend")}</b> {s(hint)}
        </p>
      )}
      {demand !== undefined && limit !== undefined && (
        <p>
          {w("page.demand-limit", { demand: figure(demand), limit: figure(limit), unit: unitText(unit) })}
        </p>
      )}
      {working ? (
        <>
          <p className="formula">{working.formula}</p>
          <table>
            <thead className="unseen">
              <tr>
                <th scope="col">{w("page.working.symbol")}</th>
                <th scope="col">{w("page.working.value")}</th>
                <th scope="col">{w("page.working.meaning")}</th>
              </tr>
            </thead>
            <tbody>
              {working.inputs.map(({ symbol, meaning, value, unit: inputUnit, basis }) => (
                <tr key={symbol}>
                  <th scope="row">{symbol}</th>
                  <td>
                    {figure(value)}
                    {unitText(inputUnit) && ` ${unitText(inputUnit)}`}
                  </td>
                  <td>
                    {s(meaning)} <span className="basis">{w(`term.${basis}`)}</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="formula">{working.substituted}</p>
        </>
      ) : (
        <p className="sub">{w("page.no-working")}</p>
      )}
      <p className="sub">
        {w("page.working.source", { source: sourceText(source, words) })}
        {where.path !== undefined && where.path !== "" && (
          <>
            <br />
            {w("page.in-file", { path: where.path })}
          </>
        )}
      </p>
    </div>
  );
}

/** A bare number has the unit 1. */
function unitText(unit: string | undefined): string {
  return unit === undefined || unit === "1" ? "" : unit;
}
