import "./pictures.css";
import { useState } from "react";
import { useWords } from "../words.ts";
import { keepPicture } from "../work/pictures.ts";
import { Picture } from "./Picture.tsx";
import { PictureDialog } from "./PictureDialog.tsx";
import { shrunk } from "./shrink.ts";

/** Pixels of the longer side: a nail's head is still seen on a board of four metres. */
const LONGEST = 2000;

/** Pictures of something, one of them large in one press, and a way to add some. */
export function Pictures({
  of,
  names,
  onAdd,
  onTakeAway,
}: {
  /** What they show, as their alternative text says it. */
  of: string;
  names: readonly string[];
  onAdd(names: readonly string[]): void;
  onTakeAway(name: string): void;
}) {
  const { w } = useWords();
  const [large, setLarge] = useState<string>();
  const [refused, setRefused] = useState<string>();
  const take = async (files: readonly File[]): Promise<void> => {
    setRefused(undefined);
    const kept: string[] = [];
    for (const file of files) {
      const small = await shrunk(file, LONGEST);
      const name = small && (await keepPicture(small));
      if (name !== undefined) kept.push(name);
      else setRefused(w(small ? "page.picture.no-room" : "page.picture.unread", { file: file.name }));
    }
    if (kept.length > 0) onAdd(kept);
  };
  const says = (at: number): string => w("page.picture.of", { of, number: String(at + 1) });
  return (
    <span className="pictures">
      {names.map((name, at) => (
        <button key={name} type="button" className="picture-small" onClick={() => setLarge(name)}>
          <Picture name={name} says={says(at)} />
        </button>
      ))}
      <label className="picture-add">
        <input
          type="file"
          accept="image/*"
          multiple
          aria-label={w("page.picture.add-of", { of })}
          onChange={({ target }) => {
            void take([...(target.files ?? [])]);
            // The same file may be chosen again.
            target.value = "";
          }}
        />
        <span aria-hidden="true">{w("page.picture.add")}</span>
      </label>
      <span role="status">{refused}</span>
      {large !== undefined && (
        <PictureDialog
          name={large}
          says={says(names.indexOf(large))}
          onTakeAway={() => onTakeAway(large)}
          onClose={() => setLarge(undefined)}
        />
      )}
    </span>
  );
}
