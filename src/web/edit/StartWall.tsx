import { useState } from "react";
import { startWall } from "../../project/editing/start.ts";
import { printProject } from "../../project/print.ts";
import { useWords } from "../words.ts";
import { LengthField } from "./fields/LengthField.tsx";
import { DrawingFold } from "./intake/DrawingFold.tsx";
import { StartPlan } from "./StartPlan.tsx";

/** Where no file is on the sheet: a wall by its width and height, to draw openings on, or a run of walls. */
export function StartWall({ onOpen }: { onOpen: (file: File) => void }) {
  const { w, reader } = useWords();
  const [width, setWidth] = useState(4800);
  const [height, setHeight] = useState(2550);
  const start = (): void => {
    const { units, language } = reader;
    const wall = startWall({ title: w("page.start.title"), width, height, display: { units, language } });
    onOpen(new File([printProject(wall)], "wall.outerleaf.json", { type: "application/json" }));
  };
  return (
    <div className="start">
      <form
        className="place-fields"
        aria-label={w("page.start")}
        onSubmit={(event) => event.preventDefault()}
      >
        <LengthField
          label={w("page.edit.width")}
          help="face-width"
          value={width}
          least={1}
          onChange={setWidth}
        />
        <LengthField
          label={w("page.edit.height")}
          help="face-height"
          value={height}
          least={1}
          onChange={setHeight}
        />
        <p className="edit-words">
          <button type="button" onClick={start}>
            {w("page.start")}
          </button>
        </p>
        <p className="edit-why">{w("page.start.why")}</p>
      </form>
      <StartPlan onOpen={onOpen} />
      <DrawingFold
        onTake={({ document }) =>
          onOpen(new File([printProject(document)], "face.outerleaf.json", { type: "application/json" }))
        }
      />
    </div>
  );
}
