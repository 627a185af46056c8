import { symbolOf } from "../../scene/model.ts";
import { present } from "../edit/history.ts";
import { OutcomeMark } from "../notes/OutcomeMark.tsx";
import type { Sheeted } from "../sheet/sheeted.ts";
import { useWords } from "../words.ts";
import { figuresOf, settledApart } from "./figures.ts";
import type { Variant, Variants } from "./use-variants.ts";

/** What is on the sheet beside the variants that are kept: what differs, and the ways to keep, take or drop one. */
export function VariantsNotes({ sheeted, variants }: { sheeted: Sheeted; variants: Variants }) {
  const { w, s } = useWords();
  const { document } = present(sheeted.history);
  const { kept, keep, drop, put } = variants;
  const same = kept.find((one) => one.document === document);
  const now = figuresOf({ ...sheeted, takeoff: same?.weighed?.takeoff });
  const columns = kept.map((variant) => ({
    variant,
    figures: variant.weighed ? figuresOf(variant.weighed) : [],
  }));
  return (
    <div className="variants">
      <p>{w("page.variants.about")}</p>
      <button type="button" className="fold" disabled={same !== undefined} onClick={keep}>
        {same ? w("page.variants.is-kept", { name: same.name }) : w("page.variants.keep")}
      </button>
      {kept.length > 0 && (
        <>
          <table>
            <thead>
              <tr>
                <td />
                <th scope="col">{w("page.variants.now")}</th>
                {kept.map(({ name, says }) => (
                  <th scope="col" key={name} title={s(says)}>
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {now.map(({ label, value }, row) => (
                <tr key={label.key}>
                  <th scope="row">{s(label)}</th>
                  <td>{value ? s(value) : "–"}</td>
                  {columns.map(({ variant, figures }) => {
                    const own = figures[row]?.value;
                    const said = own ? s(own) : "–";
                    const differs = value !== undefined && own !== undefined && said !== s(value);
                    return (
                      <td key={variant.name} className={differs ? "differs" : undefined}>
                        {said}
                      </td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
          {kept.map((variant) => (
            <Kept key={variant.name} variant={variant} sheeted={sheeted} drop={drop} put={put} />
          ))}
        </>
      )}
    </div>
  );
}

function Kept({
  variant,
  sheeted,
  drop,
  put,
}: { variant: Variant; sheeted: Sheeted } & Pick<Variants, "drop" | "put">) {
  const { w, s } = useWords();
  const { name, weighed } = variant;
  const { only, gone } = weighed ? settledApart(weighed.findings, sheeted.findings) : { only: [], gone: [] };
  return (
    <section className="variant">
      <h3>
        {name} <span className="sub">{s(variant.says)}</span>
      </h3>
      <p className="edit-words">
        <button type="button" onClick={() => put(name)}>
          {w("page.variants.put", { name })}
        </button>
        <button type="button" onClick={() => drop(name)}>
          {w("page.variants.drop", { name })}
        </button>
      </p>
      {[
        { key: "only", findings: only },
        { key: "gone", findings: gone },
      ].map(
        ({ key, findings }) =>
          findings.length > 0 && (
            <div key={key}>
              <p className="sub">{w(`page.variants.${key}`, { name, count: findings.length })}</p>
              <ul>
                {findings.map((finding) => (
                  <li key={`${finding.code} ${s(finding.says)}`} className="variant-finding">
                    <OutcomeMark symbol={symbolOf(finding) ?? "pass"} />
                    <span>{s(finding.says)}</span>
                  </li>
                ))}
              </ul>
            </div>
          ),
      )}
    </section>
  );
}
