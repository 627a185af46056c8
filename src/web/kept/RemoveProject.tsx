import { useState } from "react";
import { useWords } from "../words.ts";
import { type KeptProject, removeProject } from "../work/kept-api.ts";

/** Takes a project away with all its revisions, once its name was typed: nothing brings it back. */
export function RemoveProject({
  project: { id, name },
  onRemoved,
}: {
  project: KeptProject;
  onRemoved: () => void;
}) {
  const { w } = useWords();
  const [typed, setTyped] = useState<string>();
  const [failed, setFailed] = useState(false);
  if (typed === undefined) {
    return (
      <button type="button" className="kept-act" onClick={() => setTyped("")}>
        {w("page.kept.remove")}
      </button>
    );
  }
  return (
    <span className="kept-remove">
      <label>
        {w("page.kept.remove-name", { name })}
        <input value={typed} onChange={(event) => setTyped(event.currentTarget.value)} />
      </label>
      <button
        type="button"
        className="kept-act"
        disabled={typed !== name}
        onClick={() =>
          void removeProject(id, name).then((gone) => {
            setFailed(!gone);
            if (gone) onRemoved();
          })
        }
      >
        {w("page.kept.remove-now")}
      </button>
      {failed && <span role="alert">{w("page.server.cannot-keep")}</span>}
    </span>
  );
}
