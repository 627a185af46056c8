import { useState } from "react";
import { useWords } from "../words.ts";
import { type TakenPhoto, takePhoto } from "./photos.ts";

/** The camera, and what it took. */
export function PhotoField({
  photos,
  onPhotos,
}: {
  photos: readonly TakenPhoto[];
  onPhotos: (photos: readonly TakenPhoto[]) => void;
}) {
  const { w } = useWords();
  const [isRefused, setRefused] = useState(false);
  const take = async (files: readonly File[]): Promise<void> => {
    const taken = await Promise.all(files.map(takePhoto));
    const good = taken.flatMap((one) => (one ? [one] : []));
    setRefused(good.length < files.length);
    const all = [...photos, ...good];
    onPhotos(all.filter((one, at) => all.findIndex(({ sha256 }) => sha256 === one.sha256) === at));
  };
  return (
    <>
      <label className="field">
        {w("page.site.photo")}
        <input
          type="file"
          accept="image/*"
          capture="environment"
          onChange={({ currentTarget }) => {
            void take([...(currentTarget.files ?? [])]);
            currentTarget.value = "";
          }}
        />
      </label>
      {isRefused && (
        <p className="warn" role="alert">
          {w("page.site.no-photo")}
        </p>
      )}
      {photos.length > 0 && (
        <ul className="photos">
          {photos.map(({ sha256, url }, at) => (
            <li key={sha256}>
              <img src={url} alt={w("page.site.photo-nth", { number: at + 1 })} />
              <button type="button" onClick={() => onPhotos(photos.filter((one) => one.sha256 !== sha256))}>
                {w("page.site.photo-out")}
              </button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
