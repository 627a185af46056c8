import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import { symbolOf } from "../../scene/model.ts";
import { heading } from "../../scene/views/extent.ts";
import { PickFields } from "../edit/fields/PickFields.tsx";
import { OutcomeMark } from "../notes/OutcomeMark.tsx";
import { RodFold } from "../notes/RodFold.tsx";
import { TakeOffFold } from "../notes/TakeOffFold.tsx";
import { factsOf } from "../picks/facts.ts";
import { concerns, leadOpening, type Pick, pickKey, pickName, zoneIdOf } from "../picks/pick.ts";
import { rodOf } from "../picks/rod.ts";
import { takeOffOf } from "../picks/take-off.ts";
import type { Edit } from "../sheet/use-project.ts";
import { type Stillness, useStill } from "../sheet/use-still.ts";
import { useWords } from "../words.ts";
import { YearPlot } from "../years/YearPlot.tsx";
import { SectionDrawing } from "./SectionDrawing.tsx";

export interface PickDetailProps {
  readonly design: Design;
  readonly findings: readonly Finding[];
  readonly pick: Pick | undefined;
  /** The project's JSON, which edits are made to. */
  readonly document: unknown;
  onFinding(finding: Finding): void;
  onPick(pick: Pick): void;
  onEdit(edit: Edit): void;
}

/** Sections and years are dear to draw: a hand that drags would feel each one. */
const DEAR: Stillness = { rest: 150, atMost: 1000 };

/** The section through what is picked, its facts and fields, and its year; of the lead opening while nothing is. */
export function PickDetail({ design, pick, ...rest }: PickDetailProps) {
  const shown = pick ?? leadOpening(design) ?? firstFace(design);
  const still = useStill(design, shown && pickKey(shown), DEAR);
  return (
    shown && (
      <>
        <SectionDrawing design={still} pick={shown} picked={pick} />
        <PickFacts {...rest} design={design} pick={shown} />
        <YearPlot design={still} pick={shown} />
      </>
    )
  );
}

function firstFace(design: Design): Pick | undefined {
  const face = design.facade.faces[0];
  return face && { kind: "face", face: face.id };
}

/** Findings said of one pick at most. */
const MOST_SAID = 6;

function PickFacts({
  design,
  pick,
  findings,
  document,
  onFinding,
  onPick,
  onEdit,
}: PickDetailProps & { readonly pick: Pick }) {
  const { w, s } = useWords();
  const here = findings.filter(concerns(design, pick)).filter(({ outcome }) => outcome !== "not applicable");
  const said = here.slice(0, MOST_SAID);
  const takeOff = takeOffOf(design, pick);
  const rod = rodOf(design, pick);
  return (
    <div className="facts">
      <h2>{s(pickName(design, pick))}</h2>
      <Belongs design={design} pick={pick} onPick={onPick} />
      <dl>
        {factsOf(design, pick).map(({ label, value }) => (
          <div key={`${label.key} ${s(value)}`}>
            <dt>{s(label)}</dt>
            <dd>{s(value)}</dd>
          </div>
        ))}
      </dl>
      <PickFields
        key={pickKey(pick)}
        design={design}
        pick={pick}
        document={document}
        onEdit={onEdit}
        onPick={onPick}
      />
      {rod && <RodFold rod={rod} />}
      {takeOff && <TakeOffFold takeOff={takeOff} pick={pick} onPick={onPick} />}
      <h3>{w("page.said-here", { count: here.length })}</h3>
      <ul>
        {said.map((finding) => {
          const says = s(finding.says);
          return (
            <li key={`${finding.code} ${says} ${finding.where.zone ?? ""}`}>
              <button type="button" className="here" title={says} onClick={() => onFinding(finding)}>
                <OutcomeMark symbol={symbolOf(finding) ?? "pass"} />
                <span>{w(`page.rule.${finding.code}`)}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}

/** The face and the zone that it is part of, each to be picked. */
function Belongs({ design, pick, onPick }: { design: Design; pick: Pick; onPick: (pick: Pick) => void }) {
  const { w } = useWords();
  if (pick.kind === "face") return <p className="sub">{w("page.fact.face")}</p>;
  const zone = pick.kind === "zone" ? undefined : zoneIdOf(design, pick);
  return (
    <p className="sub belongs">
      <button type="button" onClick={() => onPick({ kind: "face", face: pick.face })}>
        {w("page.fact.of-face", { face: heading(pick.face) })}
      </button>
      {zone !== undefined && (
        <>
          {" · "}
          <button type="button" onClick={() => onPick({ kind: "zone", face: pick.face, id: zone })}>
            {w("page.tree.zone", { id: zone })}
          </button>
        </>
      )}
    </p>
  );
}
