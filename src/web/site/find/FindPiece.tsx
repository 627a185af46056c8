import { type FormEvent, useState } from "react";
import { useWords } from "../../words.ts";
import { fragmentOf, go, routeOfCode } from "../route.ts";
import type { Site } from "../use-site.ts";
import { found } from "./found.ts";
import { canScan, Scanner } from "./Scanner.tsx";

/** A piece by the mark on its label, typed or read from its code. */
export function FindPiece({ site }: { site: Site }) {
  const { w } = useWords();
  const [typed, setTyped] = useState("");
  const [isScanning, setScanning] = useState(false);
  const [isForeign, setForeign] = useState(false);
  const pieces = site.held?.design.facade.faces.flatMap((face) => face.pieces) ?? [];
  const matches = found(pieces, typed);
  const open = (event: FormEvent): void => {
    event.preventDefault();
    const [first] = matches;
    if (first) go({ view: "piece", mark: first.mark });
  };
  const read = (code: string): void => {
    const route = routeOfCode(code);
    setScanning(false);
    setForeign(!route);
    // The sum on the label goes along: it tells whether the piece has changed since.
    if (route?.view === "piece") {
      location.hash = `${fragmentOf(route)}${route.sum === undefined ? "" : `//${encodeURIComponent(route.sum)}`}`;
    }
  };
  return (
    <>
      <h2>{w("page.site.find")}</h2>
      <form onSubmit={open}>
        <label className="field">
          {w("page.site.mark")}
          <input
            value={typed}
            autoCapitalize="characters"
            autoComplete="off"
            autoCorrect="off"
            spellCheck={false}
            enterKeyHint="go"
            onChange={({ currentTarget }) => setTyped(currentTarget.value)}
          />
        </label>
        <button type="submit" className="main" disabled={matches.length === 0}>
          {w("page.site.open")}
        </button>
      </form>
      {canScan() && !isScanning && (
        <button type="button" onClick={() => setScanning(true)}>
          {w("page.site.scan")}
        </button>
      )}
      {isScanning && <Scanner onCode={read} onLeave={() => setScanning(false)} />}
      {isForeign && (
        <p className="warn" role="alert">
          {w("page.site.foreign-code")}
        </p>
      )}
      <p className="sub" role="status">
        {typed.trim() === ""
          ? w("page.site.find-how")
          : w("page.site.found", { count: matches.length, of: pieces.length })}
      </p>
      <ul>
        {(typed.trim() === "" ? [] : matches).slice(0, 12).map((piece) => (
          <li key={piece.mark}>
            <a className="press" href={fragmentOf({ view: "piece", mark: piece.mark })}>
              <b>{piece.mark}</b>
              <span>{w("page.site.kind", { kind: piece.kind })}</span>
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}
