import type { PlaceTaken } from "../../../project/intake/readings/take-readings.ts";
import type { Face } from "../../../project/schema/project.ts";
import { heading } from "../../../scene/views/extent.ts";
import { sayLength } from "../../../text/say.ts";
import { Scrolls } from "../../sheet/Scrolls.tsx";
import { useWords } from "../../words.ts";
import { FacePicture } from "./FacePicture.tsx";

/** As many rows are shown; the rest is counted. */
const MOST = 60;

/** Readings that come in: on a picture of each face, and in a table those that change something, beside what was read before. */
export function PlacesTaken({ faces, places }: { faces: readonly Face[]; places: readonly PlaceTaken[] }) {
  const { w, reader } = useWords();
  const changed = places.filter(({ kind }) => kind !== "same");
  const lengths = (all: readonly number[]): string =>
    all.length === 0 ? "–" : all.map((mm) => sayLength(mm, reader)).join(", ");
  return (
    <>
      <div className="intake intake-whole">
        {faces.map((face) => {
          const own = places.filter((one) => one.face === face.id);
          if (own.length === 0) return null;
          return (
            <figure key={face.id} className="intake-face">
              <FacePicture
                face={face}
                places={own}
                label={w("page.intake.places", { face: heading(face.id), count: own.length })}
              />
              <figcaption>{heading(face.id)}</figcaption>
            </figure>
          );
        })}
        <p className="sub intake-whole">{w("page.intake.places-key")}</p>
      </div>
      {changed.length > 0 && (
        <Scrolls className="intake-whole intake-places" label={w("page.intake.places-what")}>
          <table>
            <thead>
              <tr>
                {(["face", "x", "y", "was", "is"] as const).map((column) => (
                  <th scope="col" key={column}>
                    {w(`page.intake.place-${column}`)}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {changed.slice(0, MOST).map(({ face, x, y, was, is }) => (
                <tr key={`${face} ${x} ${y}`}>
                  <th scope="row">{heading(face)}</th>
                  <td>{sayLength(x, reader)}</td>
                  <td>{sayLength(y, reader)}</td>
                  <td>{lengths(was)}</td>
                  <td>{lengths(is)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {changed.length > MOST && (
            <p className="sub">{w("page.intake.places-more", { count: changed.length - MOST })}</p>
          )}
        </Scrolls>
      )}
    </>
  );
}
