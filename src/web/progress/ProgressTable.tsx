import { heading } from "../../scene/views/extent.ts";
import { STAGES } from "../../site/journal/entry.ts";
import type { SiteState } from "../../site/journal/fold.ts";
import type { FaceProgress } from "../../site/progress/counts.ts";
import { sayNumber } from "../../text/say.ts";
import { useWords } from "../words.ts";

/** A row for each face: how many of its pieces are so far, its area fixed, and which hold points are signed. */
export function ProgressTable({
  faces,
  holdPoints,
  points,
}: {
  faces: readonly FaceProgress[];
  holdPoints: SiteState["holdPoints"];
  /** Those that a face has. */
  points: (face: string) => readonly string[];
}) {
  const { w, reader } = useWords();
  return (
    <table className="progress-table">
      <caption className="sub">{w("page.progress.progress")}</caption>
      <thead>
        <tr>
          <th scope="col">{w("upkeep.column.face")}</th>
          {STAGES.map((stage) => (
            <th scope="col" key={stage}>
              {w(`drawing.stage.${stage}`)}
            </th>
          ))}
          <th scope="col">{w("page.progress.area")}</th>
          <th scope="col" className="word">
            {w("page.progress.holds")}
          </th>
        </tr>
      </thead>
      <tbody>
        {faces.map(({ face, all, reached }) => {
          const signed = holdPoints.filter(({ place }) => place.face === face);
          const open = points(face).filter((point) => !signed.some(({ body }) => body.point === point));
          return (
            <tr key={face}>
              <th scope="row">{heading(face)}</th>
              {STAGES.map((stage) => (
                <td key={stage}>
                  {w("page.progress.pieces", { count: reached[stage].pieces, all: all.pieces })}
                </td>
              ))}
              <td>
                {sayNumber(reached.fixed.areaM2, 1, reader)} / {sayNumber(all.areaM2, 1, reader)}
              </td>
              <td className="word">
                {[
                  ...signed.map(({ body }) =>
                    w("page.progress.hold", { point: body.point, name: body.signed }),
                  ),
                  ...(open.length > 0 ? [w("page.progress.unsigned", { points: open })] : []),
                ].join("; ")}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
