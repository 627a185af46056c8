import { useMemo } from "react";
import type { Design } from "../../design.ts";
import { BATTEN_FARTHEST_MM, type FixingPlan, fixingDesign } from "../../proof/wind/fixing-design.ts";
import { heading } from "../../scene/views/extent.ts";
import { message } from "../../text/message.ts";
import type { Pick } from "../picks/pick.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import "./wind.css";

/** Screws of each zone before and after: as set out, and the fewest that hold in wind. */
export function FixingDesign({
  design,
  onPick,
  onEdit,
}: {
  design: Design;
  onPick: (pick: Pick) => void;
  onEdit: (edit: Edit) => void;
}) {
  const { w } = useWords();
  const { facade } = design;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a design that has been proven since has the same facade
  const plans = useMemo(() => fixingDesign(design), [facade]);
  if (plans.length === 0) return null;
  return (
    <>
      <h3>{w("page.fixing")}</h3>
      <p className="sub">{w("page.fixing.about", { most: BATTEN_FARTHEST_MM })}</p>
      <Scrolls className="fixing-plans" label={w("page.fixing")}>
        <table>
          <thead>
            <tr>
              <th scope="col">{w("page.fixing.of")}</th>
              <th scope="col">{w("page.fixing.before")}</th>
              <th scope="col">{w("page.fixing.after")}</th>
              <th scope="col">
                <span className="unseen">{w("page.fixing.set")}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {plans.map((plan) => (
              <PlanRow key={`${plan.face} ${plan.zone} ${plan.of}`} {...{ plan, onPick, onEdit }} />
            ))}
          </tbody>
        </table>
      </Scrolls>
    </>
  );
}

function PlanRow({
  plan,
  onPick,
  onEdit,
}: {
  plan: FixingPlan;
  onPick: (pick: Pick) => void;
  onEdit: (edit: Edit) => void;
}) {
  const { w } = useWords();
  const { face, zone, of, marks, screwsNow, screwsAfter, spacingNow, spacingAfter, gives, edit } = plan;
  const [first] = gives;
  const name = w(`page.fixing.${of.replace(" ", "-")}`, { face: heading(face), zone, count: marks.length });
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="figure">
        {w("page.fixing.screws", { count: screwsNow, spacing: Math.round(spacingNow) })}
      </td>
      <td className="figure">
        {screwsAfter !== undefined && spacingAfter !== undefined ? (
          w("page.fixing.screws", { count: screwsAfter, spacing: Math.round(spacingAfter) })
        ) : first === undefined ? null : (
          <button type="button" onClick={() => onPick({ kind: "piece", face, id: first })}>
            {w("page.fixing.gives", { mark: first, count: gives.length })}
          </button>
        )}
      </td>
      <td>
        {edit && (
          <button
            type="button"
            aria-label={w("page.fixing.set-of", { name })}
            onClick={() => onEdit({ operations: edit, says: message("page.fixing.edit") })}
          >
            {w("page.fixing.set")}
          </button>
        )}
      </td>
    </tr>
  );
}
