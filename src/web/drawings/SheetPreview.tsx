import { useEffect, useState } from "react";
import type { DrawingSheet } from "../../output/drawings/drawing-sheets.ts";
import { useWords } from "../words.ts";

/** As a picture of its own, so that its inks for print stay its own. */
export function SheetPreview({ sheet: { svg, title } }: { sheet: DrawingSheet }) {
  const { s } = useWords();
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  return <img className="sheet-preview" src={address} alt={s(title)} />;
}
