import { useEffect, useState } from "react";
import { useWords } from "../words.ts";
import { pictureOf } from "../work/pictures.ts";

/** A picture by its name; where it is neither in this browser nor at the server, words say so. */
export function Picture({ name, says }: { name: string; says: string }) {
  const { w } = useWords();
  const [address, setAddress] = useState<string | "missing">();
  useEffect(() => {
    let made: string | undefined;
    let left = false;
    void pictureOf(name).then((blob) => {
      if (left) return;
      made = blob && URL.createObjectURL(blob);
      setAddress(made ?? "missing");
    });
    return () => {
      left = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [name]);
  if (address === "missing") return <span className="sub">{w("page.picture.missing")}</span>;
  return address === undefined ? null : <img src={address} alt={says} />;
}
