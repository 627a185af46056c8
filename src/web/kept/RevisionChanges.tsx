import { useEffect, useState } from "react";
import { type Change, changesOf } from "../../project/versions.ts";
import { useWords } from "../words.ts";
import { fetchRevision } from "../work/kept-api.ts";
import { ChangeList } from "./ChangeList.tsx";

/** What a revision changed in the one that is listed before it. */
export function RevisionChanges({ id, from, to }: { id: string; from: number; to: number }) {
  const { w } = useWords();
  const [changes, setChanges] = useState<readonly Change[] | "asking" | "none">("asking");
  useEffect(() => {
    let isLeft = false;
    void Promise.all([fetchRevision(id, from), fetchRevision(id, to)]).then(([before, after]) => {
      if (!isLeft) setChanges(before && after ? changesOf(before.document, after.document) : "none");
    });
    return () => {
      isLeft = true;
    };
  }, [id, from, to]);
  if (typeof changes !== "string") return <ChangeList changes={changes} />;
  return <p className="sub">{w(changes === "asking" ? "page.kept.asking" : "page.kept.unreached")}</p>;
}
