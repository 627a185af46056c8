import { useState } from "react";
import { setMeasured } from "../../../project/editing/as-built.ts";
import type { Source } from "../../../project/editing/change.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import { ChoiceField } from "./ChoiceField.tsx";
import { LengthField } from "./LengthField.tsx";

const DIAGONALS = [
  { key: "rising", help: "built-diagonal-rising" },
  { key: "falling", help: "built-diagonal-falling" },
] as const;

/** Both diagonals of an opening as measured: what its jambs lean follows from them, and one alone tells nothing. */
export function DiagonalFields({
  source,
  face,
  onEdit,
}: {
  source: Source;
  face: string;
  onEdit: (edit: Edit) => void;
}) {
  const { w } = useWords();
  const { project } = source;
  const openings = project.faces.find(({ id }) => id === face)?.openings ?? [];
  const [chosen, setChosen] = useState<string>();
  const opening = openings.find(({ id }) => id === chosen) ?? openings[0];
  if (!opening) return null;
  const { id } = opening;
  return (
    <form
      className="saw-fields"
      aria-label={w("page.survey.diagonals")}
      onSubmit={(event) => event.preventDefault()}
    >
      <ChoiceField
        label={w("page.survey.opening")}
        help="built-opening"
        value={id}
        choices={openings.map((one) => ({ value: one.id, text: one.id }))}
        onChoose={setChosen}
      />
      <Pair key={`${face} ${id}`} {...{ source, face, onEdit }} opening={opening} />
    </form>
  );
}

function Pair({
  source,
  face,
  opening: { id, x, y },
  onEdit,
}: {
  source: Source;
  face: string;
  opening: Source["project"]["faces"][number]["openings"][number];
  onEdit: (edit: Edit) => void;
}) {
  const { w } = useWords();
  const own = source.project.asBuilt?.openings?.find((one) => one.face === face && one.opening === id);
  // The one that waits for the other is not in the file.
  const [alone, setAlone] = useState<readonly (number | undefined)[]>([]);
  const held = own?.diagonals ?? alone;
  const [width, height] = [own?.width ?? x[1] - x[0], own?.height ?? y[1] - y[0]];
  const type = (which: 0 | 1, mm: number): void => {
    const [rising, falling] = which === 0 ? [mm, held[1]] : [held[0], mm];
    if (rising === undefined || falling === undefined) {
      setAlone(which === 0 ? [mm, undefined] : [undefined, mm]);
      return;
    }
    setAlone([]);
    const change = setMeasured(source, { face, opening: id }, { diagonals: [rising, falling] });
    if (change) onEdit({ ...change, merge: `measured ${face} ${id} diagonals`, made: source.document });
  };
  // A triangle's third side is longer than what its two others differ by, and shorter than both together.
  const [least, most] = [Math.abs(width - height), width + height];
  const isAlone = (held[0] === undefined) !== (held[1] === undefined);
  return (
    <>
      {DIAGONALS.map(({ key, help }, i) => (
        <LengthField
          key={key}
          label={w(`page.survey.diagonal-${key}`)}
          help={help}
          value={held[i]}
          least={least}
          most={most}
          outside={w("page.survey.no-diagonal", { width, height, least, most })}
          onChange={(mm) => type(i as 0 | 1, mm)}
        />
      ))}
      {isAlone && (
        <p className="sub" role="status">
          {w("page.survey.both-diagonals")}
        </p>
      )}
    </>
  );
}
