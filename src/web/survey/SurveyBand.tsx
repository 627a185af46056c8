import { memo, useDeferredValue, useMemo, useState } from "react";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { startSurvey } from "../../project/editing/readings.ts";
import { asBuiltMap } from "../../scene/views/as-built-map.ts";
import { heading } from "../../scene/views/extent.ts";
import { packingMap } from "../../scene/views/packing-map.ts";
import type { SiteState } from "../../site/journal/fold.ts";
import { leanOf, surveyFindings } from "../../site/survey/findings.ts";
import { joinedPlanes } from "../../site/survey/joined.ts";
import { chosenPacking, type PlaneKind, surveyFace } from "../../site/survey/packing.ts";
import { readingsOfBoth } from "../../site/survey/reading.ts";
import { ScenePicture } from "../drawing/ScenePicture.tsx";
import { PackingWorkFields } from "../edit/fields/PackingWorkFields.tsx";
import { sourceOf } from "../edit/handles/handle.ts";
import type { Pick } from "../picks/pick.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { AsBuilt, useLaidAgain } from "./AsBuilt.tsx";
import { FoundList } from "./FoundList.tsx";
import { PlanesTable } from "./PlanesTable.tsx";
import { Readings } from "./Readings.tsx";
import { ReadingsFold } from "./ReadingsFold.tsx";
import "./texts.ts";
import "./survey.css";

export interface SurveyBandProps {
  readonly design: Design;
  /** The file's. */
  readonly name: string;
  /** The design's findings are still those of the one before. */
  readonly proving: boolean;
  /** The project's JSON, which edits are made to. */
  readonly document: unknown;
  readonly pick: Pick | undefined;
  /** What the site told; absent where nobody was asked. */
  readonly told: SiteState | undefined;
  /** The plane that was chosen to pack to, on all faces. */
  readonly plane: PlaneKind | undefined;
  onPlane(kind: PlaneKind): void;
  onMark(mark: string): void;
  onFinding(finding: Finding): void;
  onEdit(edit: Edit): void;
}

/** The wall as it was read: its readings, the planes that battens can be packed to, and the packing at each crossing. */
export const SurveyBand = memo(function SurveyBand({
  design,
  name,
  proving,
  document,
  pick,
  told,
  plane,
  onPlane,
  onMark,
  onFinding,
  onEdit,
}: SurveyBandProps) {
  const { w } = useWords();
  const { project, facade } = design;
  const walls = project.faces.map(({ id }) => id);
  const readings = useMemo(() => readingsOfBoth(project, told), [project, told]);
  const [chosen, setChosen] = useState<string>();
  const first = readings[0]?.face ?? walls[0] ?? "";
  const picked = pick && walls.includes(pick.face) ? pick.face : undefined;
  const face = chosen !== undefined && walls.includes(chosen) ? chosen : (picked ?? first);
  const of = useDeferredValue(face);
  const { planes, corners } = useMemo(
    () => joinedPlanes({ facade, project }, { readings, lean: leanOf(project) }),
    [facade, project, readings],
  );
  const surveyed = useMemo(
    () =>
      surveyFace({ facade, project }, { face: of, readings, lean: leanOf(project), joined: planes.get(of) }),
    [facade, project, of, readings, planes],
  );
  const packing = chosenPacking(surveyed.packings, plane);
  const findings = useMemo(
    () => surveyFindings({ facade, project, surveyed, readings }, packing),
    [facade, project, surveyed, readings, packing],
  );
  const map = useMemo(
    () => packing && packingMap({ facade, project }, { face: of, packing }),
    [facade, project, of, packing],
  );
  const again = useLaidAgain(design, of, told);
  const overlay = useMemo(
    () =>
      again &&
      asBuiltMap(facade, {
        face: of,
        measured: again.measured,
        pieces: again.laid.kind === "found" ? again.laid.pieces : [],
      }),
    [facade, of, again],
  );
  const source = useMemo(() => sourceOf(design, document), [design, document]);
  const isRead = readings.some((one) => one.face === face);
  const begin = startSurvey(source, { face });
  return (
    <div className="survey-band">
      <Scrolls className="survey-told" label={w("page.part.survey")}>
        <h2>{w("page.survey", { face: heading(face) })}</h2>
        <fieldset className="survey-faces">
          <legend className="unseen">{w("page.survey.face")}</legend>
          {walls.map((id) => (
            <button type="button" key={id} aria-pressed={id === face} onClick={() => setChosen(id)}>
              {heading(id)}
            </button>
          ))}
        </fieldset>
        {begin ? (
          <>
            <p>{w(isRead ? "page.survey.told" : "page.survey.none", { face: heading(face) })}</p>
            <p className="edit-words">
              <button type="button" onClick={() => onEdit(begin)}>
                {w("page.survey.begin")}
              </button>
            </p>
          </>
        ) : (
          <Readings source={source} face={face} onEdit={onEdit} />
        )}
        <ReadingsFold source={source} onEdit={onEdit} />
        {isRead && (
          <>
            <PlanesTable surveyed={surveyed} project={project} kind={packing?.kind} onKind={onPlane} />
            {corners
              .filter(({ left, right }) => left === of || right === of)
              .map((corner) => (
                <p className="sub" key={`${corner.left} ${corner.right}`}>
                  {w("survey.corner", {
                    ...corner,
                    left: heading(corner.left),
                    right: heading(corner.right),
                  })}
                </p>
              ))}
            <PackingWorkFields source={source} onEdit={onEdit} />
            <FoundList findings={findings} onFinding={onFinding} />
          </>
        )}
        <AsBuilt
          {...{ source, face, name, again, told, onEdit, onMark, onFinding }}
          proven={proving ? undefined : design.findings}
        />
        <p className="caution">{w("page.survey.caution")}</p>
      </Scrolls>
      {((map && isRead) || overlay) && (
        <Scrolls className="survey-map" label={w("page.survey.map")}>
          {overlay && <ScenePicture scene={overlay} picked={[]} onMark={onMark} />}
          {map && isRead && <ScenePicture scene={map} picked={[]} onMark={onMark} />}
        </Scrolls>
      )}
    </div>
  );
});
