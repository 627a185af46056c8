/** A joint's name for as long as it lies where it does: the way it runs, its line, and where along it it begins. */
import { polygonBounds } from "../../geometry/polygon.ts";
import type { FaceLayout, Joint } from "../../setout/facade.ts";

const named = new WeakMap<
  FaceLayout,
  { readonly ids: readonly string[]; readonly byId: ReadonlyMap<string, Joint> }
>();

function namesOf(face: FaceLayout) {
  const known = named.get(face);
  if (known) return known;
  const byId = new Map<string, Joint>();
  const ids = face.joints.map((joint) => {
    const id = placeName(joint);
    // Parts of one joint round an opening may begin at one place.
    let own = id;
    for (let number = 2; byId.has(own); number += 1) own = `${id} ${number}`;
    byId.set(own, joint);
    return own;
  });
  const names = { ids, byId };
  named.set(face, names);
  return names;
}

function placeName({ along, region, zone = "" }: Joint): string {
  const { x, y } = polygonBounds(region);
  return [along, along === "y" ? x[0] : y[0], along === "y" ? y[0] : x[0], zone].join(" ");
}

/** Of the joint at a place of the face's list. */
export function jointId(face: FaceLayout, index: number): string {
  return namesOf(face).ids[index] ?? "";
}

/** The name that a joint would have on another line. */
export function jointIdAt(id: string, line: number): string {
  const [along, , start, ...zone] = id.split(" ");
  return [along, line, start, ...zone].join(" ");
}

/** The joint of a name, or of those that run its way in its zone the nearest to where it lay. */
export function jointById(face: FaceLayout, id: string): Joint | undefined {
  const { byId } = namesOf(face);
  const exact = byId.get(id);
  if (exact) return exact;
  const [along, line, start, zone] = id.split(" ");
  let best: { readonly far: number; readonly joint: Joint } | undefined;
  for (const [name, joint] of byId) {
    const [way, at, from, own] = name.split(" ");
    if (way !== along || own !== zone) continue;
    const far = Math.hypot(Number(at) - Number(line), Number(from) - Number(start));
    if (!best || far < best.far) best = { far, joint };
  }
  return best?.joint;
}
