import { useEffect, useRef } from "react";
import { useWords } from "../words.ts";
import { Picture } from "./Picture.tsx";

/** A picture as large as the window lets it be. */
export function PictureDialog({
  name,
  says,
  onTakeAway,
  onClose,
}: {
  name: string;
  says: string;
  onTakeAway(): void;
  onClose(): void;
}) {
  const { w } = useWords();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const close = (): void => dialog.current?.close();
  return (
    <dialog ref={dialog} className="picture-dialog" aria-label={says} onClose={onClose}>
      <Picture name={name} says={says} />
      <p className="picture-ways">
        <button type="button" onClick={close}>
          {w("page.kept.close")}
        </button>
        <button
          type="button"
          onClick={() => {
            onTakeAway();
            close();
          }}
        >
          {w("page.picture.take-away")}
        </button>
      </p>
    </dialog>
  );
}
