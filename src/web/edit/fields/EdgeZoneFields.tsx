import type { Design } from "../../../design.ts";
import type { Change, Source } from "../../../project/editing/change.ts";
import { spaceEdgeZone, widenEdgeZone } from "../../../project/editing/edge-zone.ts";
import { useWords } from "../../words.ts";
import { LengthField } from "./LengthField.tsx";

/** The edge zone of the sheets that clad a zone: how wide, and how far apart its screws may stand. */
export function EdgeZoneFields({
  design,
  source,
  cladding: id,
  doIt,
}: {
  design: Design;
  source: Source;
  cladding: string;
  doIt: (change: Change | undefined) => void;
}) {
  const { w } = useWords();
  const sheets = design.project.claddings.find((one) => one.id === id);
  if (sheets?.kind !== "sheets") return null;
  const { edgeZone } = sheets.dataSheet;
  return (
    <>
      <LengthField
        label={w("page.edit.edge-zone")}
        help="edge-zone-width"
        value={edgeZone?.width ?? 0}
        onChange={(width) => doIt(widenEdgeZone(source, id, width))}
      />
      {edgeZone && (
        <LengthField
          label={w("page.edit.edge-spacing")}
          help="edge-zone-spacing"
          value={edgeZone.fixingSpacing[1]}
          onChange={(most) => doIt(spaceEdgeZone(source, id, most))}
        />
      )}
    </>
  );
}
