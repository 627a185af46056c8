import "../../../project/intake/texts.ts";
import "./intake.css";
import { lazy, Suspense, useState } from "react";
import { type ReadDrawing, readDrawing } from "../../../project/intake/dxf/read-drawing.ts";
import type { ReadWalls } from "../../../project/intake/ifc/read-walls.ts";
import { useWords } from "../../words.ts";
import { FileField } from "./FileField.tsx";
import type { TakeDrawingProps } from "./props.ts";
import { TakeLayer } from "./TakeLayer.tsx";
import { TakenTold } from "./TakenTold.tsx";
import { TakePress } from "./TakePress.tsx";
import { textOf } from "./text-of.ts";

type Read =
  | { readonly kind: "drawing"; readonly of: ReadDrawing }
  | { readonly kind: "model"; readonly of: ReadWalls };

const TakeWalls = lazy(async () => ({ default: (await import("./TakeWalls.tsx")).TakeWalls }));

/** A drawing or a model chosen from disk; what is then chosen of it, and all that would be otherwise, before it is taken. */
export function TakeDrawing(props: TakeDrawingProps) {
  const { w } = useWords();
  const [read, setRead] = useState<Read & { readonly file: File }>();
  const choose = async (file: File): Promise<void> => {
    const text = await textOf(file);
    if (!/\.ifc$/i.test(file.name)) {
      setRead({ kind: "drawing", of: readDrawing(text, file.name), file });
      return;
    }
    const { readWalls } = await import("../../../project/intake/ifc/read-walls.ts");
    setRead({ kind: "model", of: readWalls(text, file.name), file });
  };
  return (
    <section className="intake" aria-label={w("page.intake.what")}>
      <FileField
        label={w("page.intake.drawing")}
        help="drawing-file"
        accept=".dxf,.ifc"
        onFile={(file) => void choose(file)}
      />
      {read && !read.of.ok && (
        <>
          <TakenTold taken={read.of} />
          <TakePress
            taken={read.of}
            says={w(
              props.into
                ? "page.intake.replace"
                : read.kind === "model"
                  ? "page.intake.begin-walls"
                  : "page.intake.begin",
            )}
            onTake={props.onTake}
          />
        </>
      )}
      {/* Another file is chosen afresh, whatever was chosen of the one before. */}
      {read?.kind === "drawing" && read.of.ok && (
        <TakeLayer key={read.file.lastModified + read.file.name} drawing={read.of.drawing} {...props} />
      )}
      <Suspense>
        {read?.kind === "model" && read.of.ok && (
          <TakeWalls key={read.file.lastModified + read.file.name} model={read.of.model} {...props} />
        )}
      </Suspense>
    </section>
  );
}
