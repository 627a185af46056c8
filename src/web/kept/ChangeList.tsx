import type { Change } from "../../project/versions.ts";
import { useWords } from "../words.ts";
import { sayPlace, sayValue } from "./said.ts";

/** As many are told; the rest is counted. */
const MOST = 60;

/** What leads from one version of a document to another, field by field. */
export function ChangeList({ changes }: { changes: readonly Change[] }) {
  const words = useWords();
  const { w } = words;
  if (changes.length === 0) return <p className="sub">{w("page.kept.no-changes")}</p>;
  return (
    <>
      <ul className="kept-changes">
        {changes.slice(0, MOST).map((change) => (
          <li key={`${change.kind} ${change.place.join("/")}`}>
            <b>{sayPlace(change.place, words)}</b>{" "}
            {change.kind === "order" ? (
              w("page.kept.other-order")
            ) : (
              <>
                <del>{sayValue(change.before, change.place, words)}</del> →{" "}
                <ins>{sayValue(change.after, change.place, words)}</ins>
              </>
            )}
          </li>
        ))}
      </ul>
      {changes.length > MOST && (
        <p className="sub">{w("page.kept.more-changes", { count: changes.length - MOST })}</p>
      )}
    </>
  );
}
