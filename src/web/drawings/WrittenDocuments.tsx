import { useEffect, useState } from "react";
import { useWords } from "../words.ts";
import { fetchDocuments, type WrittenDocument } from "../work/api.ts";

/** What the last issue wrote beside the project file: drawings, schedules, the calculation book. */
export function WrittenDocuments() {
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
  if (documents.length === 0) return null;
  return (
    <>
      <h3>{w("page.written-today")}</h3>
      <ul className="written">
        {documents.map(({ name, bytes }) => (
          <li key={name}>
            {/* A browser's own reader of PDFs does not open where nothing may run, as in our documents. */}
            <a
              href={`/documents/${encodeURIComponent(name)}`}
              {...(name.endsWith(".pdf") ? { download: name } : { target: "_blank", rel: "noreferrer" })}
            >
              {name}
            </a>{" "}
            <span className="sub">{w("page.kilobytes", { size: bytes / 1024 })}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
