import { useWords } from "../words.ts";
import { PARTS, type Part } from "./parts.ts";

/** The parts of the job along the binding edge. */
export function BindingMargin({ part, onPart }: { part: Part; onPart: (part: Part) => void }) {
  const { w } = useWords();
  return (
    <nav className="margin" aria-label={w("page.parts")}>
      <ul>
        {PARTS.map((one) => (
          <li key={one}>
            <button
              type="button"
              data-part={one}
              className="part"
              aria-current={one === part ? "page" : undefined}
              onClick={() => onPart(one)}
            >
              {w(`page.part.${one}`)}
            </button>
          </li>
        ))}
      </ul>
    </nav>
  );
}
