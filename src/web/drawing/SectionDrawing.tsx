import { memo, useMemo, useRef } from "react";
import type { Design } from "../../design.ts";
import type { Pick } from "../picks/pick.ts";
import { useSize } from "../sheet/use-size.ts";
import { useWords } from "../words.ts";
import { Drawn } from "./Drawn.tsx";
import { paperSize, sectionAt } from "./section.ts";

/** CSS pixels for a millimetre of paper, at true size and at least. */
const TRUE = 96 / 25.4;
const LEAST = 3;

/** The section at its scale on screen, smaller only where the room asks it. */
export const SectionDrawing = memo(function SectionDrawing({
  design,
  pick,
  picked,
}: {
  design: Design;
  pick: Pick;
  /** What is drawn in pencil red: nothing while the section stands at its usual place. */
  picked: Pick | undefined;
}) {
  const { reader, w, s } = useWords();
  const host = useRef<HTMLDivElement>(null);
  const size = useSize(host);
  const section = useMemo(
    () =>
      size &&
      sectionAt(design, pick, { reader, room: { width: size.width / LEAST, height: size.height / LEAST } }),
    [design, pick, reader, size],
  );
  const marks = useMemo(
    () => (picked?.kind === "piece" || picked?.kind === "opening" ? [picked.id] : []),
    [picked],
  );
  const paper = section && paperSize(section.body);
  const k = paper && size ? Math.min(TRUE, size.width / paper.width, size.height / paper.height) : 0;
  const { bounds, scene } = section?.body ?? {};
  return (
    <div className="section">
      <h2>{section ? s(section.title) : w("page.section")}</h2>
      <p className="sub">{section ? `1 : ${section.timesSmaller}` : w("page.section.none")}</p>
      <div className="section-host" ref={host}>
        {section && paper && bounds && scene && (
          <svg
            className="drawing drawing-light"
            width={paper.width * k}
            height={paper.height * k}
            viewBox={`${bounds.x[0] * scene.scale} ${-bounds.y[1] * scene.scale} ${paper.width} ${paper.height}`}
            preserveAspectRatio="xMinYMin meet"
            role="img"
            aria-label={s(scene.title)}
          >
            <Drawn layers={section.body.layers} picked={marks} />
          </svg>
        )}
      </div>
    </div>
  );
});
