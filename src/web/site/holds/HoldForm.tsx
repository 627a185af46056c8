import { type FormEvent, useState } from "react";
import { heading } from "../../../scene/views/extent.ts";
import { holdChecks } from "../../../site/hold-points.ts";
import { HOLD_POINTS } from "../../../site/journal/entry.ts";
import { useWords } from "../../words.ts";
import { PhotoField } from "../PhotoField.tsx";
import type { TakenPhoto } from "../photos.ts";
import { TellForm } from "../TellForm.tsx";
import type { Site } from "../use-site.ts";

const NAME = "outerleaf.site-name";

/** One hold point of one face: each thing seen, a picture, a name. Nothing is signed while a thing is not seen. */
export function HoldForm({ site, face, point }: { site: Site; face: string; point: string }) {
  const { w, s } = useWords();
  const design = site.held?.design;
  const layout = design?.facade.faces.find(({ id }) => id === face);
  const known = HOLD_POINTS.find((one) => one === point);
  const checks = layout && design ? holdChecks(layout, design).filter((one) => one.point === point) : [];
  const [seen, setSeen] = useState<readonly string[]>([]);
  const [photos, setPhotos] = useState<readonly TakenPhoto[]>([]);
  const [name, setName] = useState(() => localStorage.getItem(NAME) ?? "");
  const [told, setTold] = useState<"told" | "not-kept">();
  if (!layout || !known) {
    return (
      <p className="warn" role="alert">
        {w("page.site.no-hold", { point, face })}
      </p>
    );
  }
  const signed = site.state.holdPoints.filter(
    ({ place, body }) => place.face === face && body.point === point,
  );
  const isWhole = checks.every(({ check }) => seen.includes(check.key));
  const missing = !isWhole ? "seen" : photos.length === 0 ? "photo" : name.trim() === "" ? "name" : undefined;
  const sign = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (missing) return;
    const isKept = await site.tell({
      kind: "hold-point",
      place: { face },
      body: {
        point: known,
        signed: name.trim(),
        seen: checks.map(({ check }) => s(check)),
        photos: photos.map(({ sha256 }) => sha256),
      },
    });
    setTold(isKept ? "told" : "not-kept");
    if (!isKept) return;
    localStorage.setItem(NAME, name.trim());
    setSeen([]);
    setPhotos([]);
  };
  return (
    <>
      <h2>{w("page.site.hold-of", { point, face: heading(face) })}</h2>
      <p>{w(`page.site.hold-${known}`)}</p>
      {signed.map(({ id, body, told: when }) => (
        <p key={id} className="warn">
          {w("page.site.signed-by", { who: body.signed, when: when.slice(0, 10) })}
        </p>
      ))}
      <form onSubmit={(event) => void sign(event)}>
        <fieldset>
          <legend>{w("page.site.seen")}</legend>
          <ul>
            {checks.map(({ check, asked }) => (
              <li key={check.key}>
                <label className="check">
                  <input
                    type="checkbox"
                    checked={seen.includes(check.key)}
                    onChange={({ currentTarget }) =>
                      setSeen(
                        currentTarget.checked
                          ? [...seen, check.key]
                          : seen.filter((key) => key !== check.key),
                      )
                    }
                  />
                  <span>
                    {s(check)}
                    {asked && <b> ({s(asked)})</b>}
                  </span>
                </label>
              </li>
            ))}
          </ul>
        </fieldset>
        <p className="sub">{w("page.site.photo-scale")}</p>
        <PhotoField photos={photos} onPhotos={setPhotos} />
        <label className="field">
          {w("page.site.name")}
          <input
            value={name}
            autoComplete="name"
            maxLength={100}
            onChange={({ currentTarget }) => setName(currentTarget.value)}
          />
        </label>
        {missing && <p role="status">{w(`page.site.missing-${missing}`)}</p>}
        <button type="submit" className="main" disabled={missing !== undefined}>
          {w("page.site.sign")}
        </button>
        {told && <p role={told === "told" ? "status" : "alert"}>{w(`page.site.${told}`)}</p>}
      </form>
      <TellForm site={site} place={{ face }} />
      <p className="sub">{w("page.site.hold-local")}</p>
    </>
  );
}
