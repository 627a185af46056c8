import type { Project } from "../../project/schema/project.ts";
import { packingCost } from "../../site/survey/cost.ts";
import type { PlaneKind, SurveyedFace } from "../../site/survey/packing.ts";
import { sayLength, sayNumber } from "../../text/say.ts";
import { useWords } from "../words.ts";

/** The planes that were tried, each with what it asks; the one that is chosen is drawn. */
export function PlanesTable({
  surveyed: { face, nearest, band, twist, packings },
  project,
  kind,
  onKind,
}: {
  surveyed: SurveyedFace;
  project: Project;
  kind: PlaneKind | undefined;
  onKind: (kind: PlaneKind) => void;
}) {
  const { w, reader } = useWords();
  const lacks = [...new Set(packings.flatMap((one) => packingCost(one, project).lacks))];
  const figure = (value: number | undefined, decimals: number): string =>
    value === undefined ? "?" : sayNumber(value, decimals, reader);
  const mm = (value: number): string => sayLength(value, reader, 1);
  return (
    <>
      <p className="sub">
        {[
          ...(twist === undefined ? [] : [w("page.survey.twist", { by: twist })]),
          ...(nearest ? [w("page.survey.nearest", { most: nearest.most })] : []),
          ...(band ? [w("page.survey.smallest", { half: band.half })] : []),
        ].join(" ")}
      </p>
      {packings.length > 0 && (
        <table className="survey-planes">
          <caption className="unseen">{w("page.survey.planes")}</caption>
          <thead>
            <tr>
              {["plane", "sum", "most", "packers", "planed", "lean"].map((key) => (
                <th scope="col" key={key} className={key === "packers" || key === "planed" ? "word" : ""}>
                  {w(`page.survey.${key}`)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {packings.map((one) => (
              <tr key={one.kind}>
                <th scope="row">
                  <label>
                    <input
                      type="radio"
                      name={`plane of ${face}`}
                      checked={one.kind === kind}
                      onChange={() => onKind(one.kind)}
                    />{" "}
                    {w(`survey.plane.${one.kind}`)}
                  </label>
                </th>
                <td>{mm(one.sum)}</td>
                <td>{mm(one.most)}</td>
                <td className="word">
                  {one.packers
                    .map(({ thickness, count }) => `${count} × ${sayLength(thickness, reader)}`)
                    .join(", ")}
                </td>
                <td className="word">
                  {one.crossings
                    .filter(({ planeOff }) => planeOff > 0)
                    .map(({ planeOff }) => mm(planeOff))
                    .join(", ")}
                </td>
                <td>
                  {`${sayNumber(one.plane.alongPerM, 1, reader)} / ${sayNumber(one.plane.upPerM, 1, reader)}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {packings.length > 0 && (
        <table className="survey-costs">
          <caption className="unseen">{w("survey.cost.price")}</caption>
          <thead>
            <tr>
              {["page.survey.plane", "survey.cost.count", "survey.cost.minutes", "survey.cost.price"].map(
                (key) => (
                  <th scope="col" key={key}>
                    {w(key)}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            {packings.map((one) => {
              const { packers, minutes, price } = packingCost(one, project);
              return (
                <tr key={one.kind}>
                  <th scope="row">{w(`survey.plane.${one.kind}`)}</th>
                  <td>{packers}</td>
                  <td>{figure(minutes, 0)}</td>
                  <td>{price === undefined ? "?" : `${figure(price, 2)} ${project.stock.currency}`}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      {lacks.length > 0 && <p className="sub">{w("page.survey.work-lacks")}</p>}
    </>
  );
}
