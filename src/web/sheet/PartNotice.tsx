import { useWords } from "../words.ts";
import type { Part } from "./parts.ts";

/** A part of the job that has no place on the sheet yet: what it will hold. */
export function PartNotice({ part }: { part: Part }) {
  const { w } = useWords();
  return (
    <div className="part-notice">
      <h2>{w(`page.part.${part}`)}</h2>
      <p>{w(`page.will-hold.${part}`)}</p>
    </div>
  );
}
