import { useMemo } from "react";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { MEASURES, setMeasured, takeLaid } from "../../project/editing/as-built.ts";
import type { Source } from "../../project/editing/change.ts";
import { asBuiltFindings } from "../../site/as-built/findings.ts";
import { layAgain } from "../../site/as-built/lay-again.ts";
import { type Measured, measuredOf } from "../../site/as-built/measured.ts";
import { takenFaces } from "../../site/as-built/taken.ts";
import type { SiteState } from "../../site/journal/fold.ts";
import { DiagonalFields } from "../edit/fields/DiagonalFields.tsx";
import { LayingFields } from "../edit/fields/LayingFields.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { Choices } from "./Choices.tsx";
import { EndFields } from "./EndFields.tsx";
import { FoundList } from "./FoundList.tsx";
import { LaidPieces } from "./LaidPieces.tsx";
import { ReadingField } from "./ReadingField.tsx";
import { TakeLaid } from "./TakeLaid.tsx";
import { useNewlyFailing } from "./use-newly-failing.ts";

/** What is measured of a face, and the face laid again for it; undefined where nothing of it was measured. */
export function useLaidAgain(
  { project, demands, facade }: Design,
  face: string,
  told: SiteState | undefined,
) {
  return useMemo(() => {
    const measured = measuredOf(project, told);
    const layout = facade.faces.find(({ id }) => id === face);
    const isMeasured = [...measured.openings, ...measured.ends].some((one) => one.face === face);
    if (!layout || !isMeasured) return undefined;
    const asked = { project, demands, face: layout, measured, ...(told && { told }) };
    return { asked, measured, laid: layAgain(asked) };
  }, [project, demands, facade, face, told]);
}

export type AskedAndLaid = NonNullable<ReturnType<typeof useLaidAgain>>;

/** Openings of a face as measured, typed over the drawing, and the cladding laid again for them in one press. */
export function AsBuilt({
  source,
  face,
  name,
  proven,
  again,
  told,
  onEdit,
  onMark,
  onFinding,
}: {
  source: Source;
  face: string;
  /** The file's. */
  name: string;
  /** What is found of the project as it stands; undefined while that is not proven. */
  proven: readonly Finding[] | undefined;
  again: AskedAndLaid | undefined;
  told: SiteState | undefined;
  onEdit: (edit: Edit) => void;
  onMark: (mark: string) => void;
  onFinding: (finding: Finding) => void;
}) {
  const { w } = useWords();
  const { project } = source;
  const openings = project.faces.find(({ id }) => id === face)?.openings ?? [];
  const findings = useMemo(() => {
    if (!again) return [];
    const own = <T extends { readonly face: string }>(list: readonly T[]): T[] =>
      list.filter((one) => one.face === face);
    const measured: Measured = { openings: own(again.measured.openings), ends: own(again.measured.ends) };
    return asBuiltFindings(project, measured, [again.laid]);
  }, [again, project, face]);
  const found = again?.laid.kind === "found" ? again.laid : undefined;
  const change = useMemo(
    () => (again && found ? takeLaid(source, takenFaces(project, again.measured, [found])) : undefined),
    [again, found, project, source],
  );
  const newly = useNewlyFailing({ name, document: source.document, findings: proven, change });
  if (openings.length === 0) return null;
  return (
    <section aria-label={w("page.survey.built")}>
      <h3>{w("page.survey.built")}</h3>
      <table className="built-measures">
        <caption className="sub">{w("page.survey.built-how")}</caption>
        <thead>
          <tr>
            <th scope="col">{w("page.survey.opening")}</th>
            {MEASURES.map((key) => (
              <th scope="col" key={key}>
                {w(`page.survey.measure-${key}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {openings.map(({ id, x, y }) => {
            const own = project.asBuilt?.openings?.find((one) => one.face === face && one.opening === id);
            const drawn = { left: x[0], width: x[1] - x[0], sill: y[0], height: y[1] - y[0] };
            return (
              <tr key={id}>
                <th scope="row">{id}</th>
                {MEASURES.map((key) => (
                  <td key={key}>
                    <ReadingField
                      label={w("page.survey.measure", { opening: id, what: w(`page.survey.measure-${key}`) })}
                      value={own?.[key] ?? drawn[key]}
                      isFaint={own?.[key] === undefined}
                      onChange={(value) => {
                        const edit = setMeasured(source, { face, opening: id }, { [key]: value });
                        if (edit)
                          onEdit({ ...edit, merge: `measured ${face} ${id} ${key}`, made: source.document });
                      }}
                    />
                  </td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      <DiagonalFields {...{ source, face, onEdit }} />
      <EndFields {...{ source, face, onEdit }} />
      {(told?.openings ?? []).some(({ place }) => place.face === face) && (
        <p className="sub">{w("page.survey.built-told")}</p>
      )}
      <LayingFields {...{ source, onEdit }} />
      {again && <Choices asked={again.asked} />}
      {found && <LaidPieces laid={found} onMark={onMark} />}
      {change && newly && (
        <TakeLaid
          count={found?.pieces.length ?? 0}
          newly={newly}
          onTake={() => onEdit(change)}
          onFinding={onFinding}
        />
      )}
      <div className="built-findings">
        <FoundList findings={findings} onFinding={onFinding} />
      </div>
    </section>
  );
}
