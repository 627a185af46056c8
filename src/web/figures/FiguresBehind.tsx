import type { Finding } from "../../findings/finding.ts";
import type { Source } from "../../project/editing/change.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords } from "../words.ts";
import { FigureForm } from "./FigureForm.tsx";

/** The figures of the reference data behind a finding, each with a form for the reader's own. */
export function FiguresBehind({
  finding,
  source,
  onEdit,
}: {
  finding: Finding;
  source: Source;
  onEdit: (edit: Edit) => void;
}) {
  const { w } = useWords();
  const { figures = [] } = finding;
  return (
    <>
      <h3>{w("page.figures", { rule: w(`page.rule.${finding.code}`) })}</h3>
      <p className="sub">{w(figures.length === 0 ? "page.figures.none" : "page.figures.about")}</p>
      {figures.map((name) => (
        <FigureForm key={name} name={name} source={source} onEdit={onEdit} />
      ))}
    </>
  );
}
