import type { SymbolName } from "../../scene/model.ts";
import { useWords } from "../words.ts";

/** ■ ▲ ◇ ◌ ✓ as shapes, with the word for those who hear the sheet. */
export function OutcomeMark({ symbol }: { symbol: SymbolName }) {
  const { w } = useWords();
  return (
    <svg
      className={`outcome outcome-${symbol.replace(" ", "-")}`}
      viewBox="-8 -8 16 16"
      role="img"
      aria-label={symbol === "provisional" ? w("page.provisional") : w(`term.${symbol}`)}
    >
      {shape(symbol)}
    </svg>
  );
}

function shape(symbol: SymbolName) {
  switch (symbol) {
    case "fail":
      return <rect x={-5.5} y={-5.5} width={11} height={11} />;
    case "attention":
      return <path d="M0 -6.5L6.5 5.5H-6.5Z" />;
    case "cannot evaluate":
      return <path d="M0 -6.5L6.5 0L0 6.5L-6.5 0Z" />;
    case "provisional":
      return <circle r={5.5} />;
    case "pass":
      return <path d="M-5.5 0.5L-1.5 5L6 -5.5" />;
  }
}
