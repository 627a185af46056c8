import { useWords } from "../../words.ts";
import { said } from "../said.ts";
import type { Site } from "../use-site.ts";
import type { Waiting } from "./model.ts";

/** What waits and what was refused, and why nothing is lost. */
export function QueueView({ site }: { site: Site }) {
  const { w, s } = useWords();
  const open = site.waiting.filter(({ refused }) => refused === undefined);
  const refused = site.waiting.filter((one) => one.refused !== undefined);
  const again = ({ entry, ...waiting }: Waiting): void => {
    const { id: _, told: __, ...telling } = entry;
    void site.tell(telling, { entry, ...waiting });
  };
  return (
    <>
      <h2>{w("page.site.queue")}</h2>
      <p role="status">
        {w(
          `page.site.rest-${open.length > 0 && site.rest === "empty" ? "sending" : (site.rest ?? "sending")}`,
          {
            count: open.length,
          },
        )}
      </p>
      {refused.length > 0 && (
        <section>
          <h3>{w("page.site.refused")}</h3>
          <ul>
            {refused.map((one) => (
              <li key={one.place} className="warn">
                <p>{s(said(one.entry))}</p>
                <p>{one.refused}</p>
                <button type="button" onClick={() => again(one)}>
                  {w("page.site.tell-again")}
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <ol className="queue">
        {open.map(({ place, entry }) => (
          <li key={place}>{s(said(entry))}</li>
        ))}
      </ol>
      <button type="button" onClick={site.sendNow}>
        {w("page.site.send-now")}
      </button>
      <p className="sub">{w("page.site.queue-why")}</p>
    </>
  );
}
