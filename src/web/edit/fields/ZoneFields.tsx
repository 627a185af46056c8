import { useState } from "react";
import { ALIKE, keepAlike, takesFromPile } from "../../../project/editing/alike.ts";
import type { Change } from "../../../project/editing/change.ts";
import { allowBand, type JointAxis, unpinJoint } from "../../../project/editing/joints.ts";
import {
  axisOf,
  cladZone,
  freeSides,
  moveZoneSide,
  removeZone,
  type Side,
  splitZone,
  zoneAt,
  zoneBox,
} from "../../../project/editing/zones.ts";
import { message } from "../../../text/message.ts";
import { snap } from "../../../units/length.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { ChoiceField } from "./ChoiceField.tsx";
import { EdgeZoneFields } from "./EdgeZoneFields.tsx";
import { LengthField } from "./LengthField.tsx";
import type { FieldsProps } from "./props.ts";

/** The sides of the zone that is picked, what clads it, the line that would part it, and its joints' wishes. */
export function ZoneFields({ design, pick, document, onEdit, onPick }: FieldsProps<"zone">) {
  const { w, s } = useWords();
  const [axis, setAxis] = useState<JointAxis>("x");
  const [typed, setTyped] = useState<number>();
  const source = sourceOf(design, document);
  const at = zoneAt(source, pick);
  if (!at) return null;
  const { face, zone } = at;
  const box = zoneBox(face, zone);
  const middle = snap((box[axis][0] + box[axis][1]) / 2);
  const line = typed ?? middle;
  const placeOf = (side: Side): number =>
    ({ left: box.x[0], right: box.x[1], bottom: box.y[0], top: box.y[1] })[side];
  const doIt = (change: Change | undefined): void => {
    if (change) onEdit(change);
  };
  const removal = removeZone(source, pick);
  const split = splitZone(source, pick, { axis, at: line });
  const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => ({ value: id, text: id }));
  return (
    <form
      className="place-fields"
      aria-label={w("page.edit.place", { id: pick.id })}
      onSubmit={(event) => event.preventDefault()}
    >
      {freeSides(zone).map((side) => (
        <LengthField
          key={side}
          label={w(`page.edit.side-${side}`)}
          help={`zone-side-${axisOf(side)}`}
          value={placeOf(side)}
          onChange={(to) => doIt(moveZoneSide(source, pick, side, to))}
        />
      ))}
      <ChoiceField
        label={w("page.fact.cladding")}
        help="zone-cladding"
        value={zone.cladding}
        choices={ids(design.project.claddings)}
        onChoose={(cladding) => doIt(cladZone(source, pick, { cladding }))}
      />
      <EdgeZoneFields design={design} source={source} cladding={zone.cladding} doIt={doIt} />
      <ChoiceField
        label={w("page.fact.build-up")}
        help="zone-build-up"
        value={zone.buildUp}
        choices={ids(design.project.buildUps)}
        onChoose={(buildUp) => doIt(cladZone(source, pick, { buildUp }))}
      />
      {takesFromPile(design.project, zone) && (
        <ChoiceField
          label={w("page.edit.alike")}
          help="zone-alike"
          value={zone.alike ?? "face"}
          choices={ALIKE.map((value) => ({ value, text: w(`page.edit.alike-${value}`) }))}
          onChoose={(alike) => doIt(keepAlike(source, pick, alike))}
        />
      )}
      <ChoiceField
        label={w("page.edit.split-along")}
        help="zone-split-along"
        value={axis}
        choices={[
          { value: "x", text: w("page.edit.split-upright") },
          { value: "y", text: w("page.edit.split-level") },
        ]}
        onChoose={(next) => {
          setAxis(next);
          setTyped(undefined);
        }}
      />
      <LengthField
        key={axis}
        label={w(axis === "x" ? "page.edit.left" : "page.edit.over-datum")}
        help={`zone-split-${axis}`}
        value={line}
        onChange={setTyped}
      />
      <p className="edit-words">
        <button
          type="button"
          disabled={!split}
          onClick={() => {
            if (!split) return;
            onEdit(split);
            onPick({ kind: "zone", ...split.added });
          }}
        >
          {w("page.edit.split")}
        </button>
        <button type="button" disabled={!removal} onClick={() => doIt(removal)}>
          {w("page.edit.merge")}
        </button>
      </p>
      {!split && (
        <p className="edit-why">{w("page.edit.split-outside", { from: box[axis][0], to: box[axis][1] })}</p>
      )}
      {!removal && <p className="edit-why">{w("page.edit.merge-none")}</p>}
      {(["x", "y"] as const).map((of) => (
        <ul key={of} className="edit-words">
          {(zone.joints?.pinned?.[of] ?? []).map((pin) => (
            <li key={pin}>
              {s(message(of === "x" ? "page.edit.pin-upright" : "page.edit.pin-level", { at: pin }))}{" "}
              <button type="button" onClick={() => doIt(unpinJoint(source, pick, { axis: of, at: pin }))}>
                {w("page.edit.free")}
              </button>
            </li>
          ))}
          {(zone.joints?.forbidden?.[of] ?? []).map(([from, to], index) => (
            <li key={`${from} ${to}`}>
              {s(message(of === "x" ? "page.edit.band-upright" : "page.edit.band-level", { from, to }))}{" "}
              <button type="button" onClick={() => doIt(allowBand(source, pick, { axis: of, index }))}>
                {w("page.edit.allow")}
              </button>
            </li>
          ))}
        </ul>
      ))}
    </form>
  );
}
