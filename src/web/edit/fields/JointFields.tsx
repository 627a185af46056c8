import { polygonBounds } from "../../../geometry/polygon.ts";
import type { Change } from "../../../project/editing/change.ts";
import { forbidBand, pinJoint, unpinJoint } from "../../../project/editing/joints.ts";
import { zoneAt } from "../../../project/editing/zones.ts";
import { snap } from "../../../units/length.ts";
import { jointIdAt } from "../../picks/joint-id.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { sheetJointOf } from "../handles/joint.ts";
import { LengthField } from "./LengthField.tsx";
import type { FieldsProps } from "./props.ts";

/** A joint between sheets: where it is pinned, or that it may not be here. */
export function JointFields({ design, pick, document, onEdit, onPick }: FieldsProps<"joint">) {
  const { w } = useWords();
  const source = sourceOf(design, document);
  const held = sheetJointOf(design, pick);
  const ref = { face: pick.face, id: held?.zone ?? "" };
  const zone = held && zoneAt(source, ref)?.zone;
  if (!held || !zone) return null;
  const { axis, at, joint } = held;
  const pinned = zone.joints?.pinned?.[axis]?.includes(at) ?? false;
  const doIt = (change: Change | undefined): void => {
    if (change) onEdit(change);
  };
  return (
    <form
      className="place-fields"
      aria-label={w("page.edit.joint")}
      onSubmit={(event) => event.preventDefault()}
    >
      <LengthField
        label={w(axis === "x" ? "page.edit.middle-left" : "page.edit.joint-line")}
        help={axis === "x" ? "joint-x" : "joint-y"}
        value={at}
        onChange={(to) => {
          doIt(pinJoint(source, ref, { axis, from: at, to }));
          onPick({ ...pick, id: jointIdAt(pick.id, axis === "x" ? snap(to - joint.width / 2) : to) });
        }}
      />
      <p className="edit-words">
        {pinned ? (
          <button
            type="button"
            aria-keyshortcuts="Delete"
            onClick={() => doIt(unpinJoint(source, ref, { axis, at }))}
          >
            {w("page.edit.free-pin")}
          </button>
        ) : (
          <button type="button" onClick={() => doIt(pinJoint(source, ref, { axis, from: at, to: at }))}>
            {w("page.edit.pin-here")}
          </button>
        )}
        <button
          type="button"
          onClick={() => doIt(forbidBand(source, ref, { axis, band: polygonBounds(joint.region)[axis] }))}
        >
          {w("page.edit.forbid")}
        </button>
      </p>
      <p className="edit-why">{w(pinned ? "page.edit.is-pinned" : "page.edit.is-free")}</p>
    </form>
  );
}
