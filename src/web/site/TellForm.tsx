import { type FormEvent, useState } from "react";
import type { Entry } from "../../site/journal/entry.ts";
import { useWords } from "../words.ts";
import { FacePicture } from "./FacePicture.tsx";
import { LengthInput } from "./LengthInput.tsx";
import { PhotoField } from "./PhotoField.tsx";
import type { TakenPhoto } from "./photos.ts";
import type { Site } from "./use-site.ts";

const KINDS = ["finding", "note", "photo"] as const;
type Kind = (typeof KINDS)[number];

/** A finding raised on the spot, a note, or a picture with its place on the face. */
export function TellForm({ site, place }: { site: Site; place: Entry["place"] }) {
  const { w } = useWords();
  const [kind, setKind] = useState<Kind>();
  const [says, setSays] = useState("");
  const [photos, setPhotos] = useState<readonly TakenPhoto[]>([]);
  const [spot, setSpot] = useState(place);
  const [told, setTold] = useState<"told" | "not-kept">();
  const face = site.held?.design.facade.faces.find(({ id }) => id === place.face);
  const ready = kind === "photo" ? photos.length > 0 : says.trim() !== "";
  const send = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (!kind || !ready) return;
    const shas = photos.map(({ sha256 }) => sha256);
    const text = says.trim();
    const tellings =
      kind === "photo"
        ? shas.map((photo) => ({
            kind,
            place: spot,
            body: { photo, ...(text === "" ? {} : { says: text }) },
          }))
        : [{ kind, place: spot, body: { says: text, ...(shas.length === 0 ? {} : { photos: shas }) } }];
    let isKept = true;
    for (const telling of tellings) isKept = (await site.tell(telling)) && isKept;
    setTold(isKept ? "told" : "not-kept");
    if (!isKept) return;
    setKind(undefined);
    setSays("");
    setPhotos([]);
  };
  return (
    <form onSubmit={(event) => void send(event)}>
      <fieldset>
        <legend>{w("page.site.tell")}</legend>
        <div className="stages">
          {KINDS.map((one) => (
            <button
              key={one}
              type="button"
              className={one === kind ? "told" : ""}
              aria-pressed={one === kind}
              onClick={() => {
                setKind(one === kind ? undefined : one);
                setTold(undefined);
              }}
            >
              {w(`page.site.tell-${one}`)}
            </button>
          ))}
        </div>
      </fieldset>
      {kind && (
        <>
          <label className="field">
            {w(`page.site.says-${kind}`)}
            <textarea
              value={says}
              maxLength={2000}
              onChange={({ currentTarget }) => setSays(currentTarget.value)}
            />
          </label>
          <PhotoField photos={photos} onPhotos={setPhotos} />
          {face && (
            <>
              <p>{w("page.site.where")}</p>
              <FacePicture
                face={face}
                spot={spot.x !== undefined && spot.y !== undefined ? { x: spot.x, y: spot.y } : undefined}
                onPlace={(x, y) => setSpot({ ...spot, x, y })}
              />
              <div className="pair">
                <LengthInput
                  label={w("page.site.across")}
                  value={spot.x}
                  onChange={(x) => setSpot({ ...spot, x })}
                />
                <LengthInput
                  label={w("page.site.up")}
                  value={spot.y}
                  onChange={(y) => setSpot({ ...spot, y })}
                />
              </div>
            </>
          )}
          <button type="submit" className="main" disabled={!ready}>
            {w("page.site.keep")}
          </button>
        </>
      )}
      {told && <p role={told === "told" ? "status" : "alert"}>{w(`page.site.${told}`)}</p>}
    </form>
  );
}
