import { useEffect, useState } from "react";
import { sayTime } from "../kept/time.ts";
import { useWords } from "../words.ts";
import { fetchIssued, type IssuedSet } from "../work/issued-api.ts";

/** The sets that went out, each with its files as they went out. `turn` counts those that were frozen here. */
export function IssuedSets({ project, turn }: { project: string; turn: number }) {
  const { w, reader } = useWords();
  const [sets, setSets] = useState<readonly IssuedSet[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was frozen here is listed
  useEffect(() => {
    let left = false;
    void fetchIssued(project).then((found) => {
      if (!left) setSets(found ?? []);
    });
    return () => {
      left = true;
    };
  }, [project, turn]);
  if (sets.length === 0) return null;
  return (
    <>
      <h3>{w("page.sheets.issued")}</h3>
      {sets.map(({ number, revision, note, who, time, files }) => (
        <details key={number} className="written">
          <summary>
            {w("page.sheets.issued-set", { revision, note })}{" "}
            <span className="sub">{[who, sayTime(time, reader)].filter((one) => one !== "").join(", ")}</span>
          </summary>
          <ul>
            {files.map(({ name, bytes }) => (
              <li key={name}>
                <a
                  href={`/api/projects/${project}/issued/${number}/files/${encodeURIComponent(name)}`}
                  download={name}
                >
                  {name}
                </a>{" "}
                <span className="sub">{w("page.kilobytes", { size: bytes / 1024 })}</span>
              </li>
            ))}
          </ul>
        </details>
      ))}
    </>
  );
}
