import { useEffect, useState } from "react";
import { useWords } from "../words.ts";
import { fetchDocuments, type WrittenDocument } from "../work/api.ts";
import { documentsOf, type Part } from "./parts.ts";

/** A part of the job that has no place on the sheet yet: what it will hold, and what is written today. */
export function PartNotice({ part }: { part: Part }) {
  const { w } = useWords();
  const [documents, setDocuments] = useState<readonly WrittenDocument[]>([]);
  useEffect(() => {
    let left = false;
    void fetchDocuments().then((found) => {
      if (!left) setDocuments(found);
    });
    return () => {
      left = true;
    };
  }, []);
  const own = documentsOf(part, documents);
  return (
    <div className="part-notice">
      <h2>{w(`page.part.${part}`)}</h2>
      <p>{w(`page.will-hold.${part}`)}</p>
      {own.length > 0 && (
        <>
          <p className="sub">{w("page.written-today")}</p>
          <ul>
            {own.map(({ name, bytes }) => (
              <li key={name}>
                <a href={`/documents/${encodeURIComponent(name)}`} target="_blank" rel="noreferrer">
                  {name}
                </a>{" "}
                <span className="sub">{w("page.kilobytes", { size: bytes / 1024 })}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}
