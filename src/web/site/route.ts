/**
 * Where the site pages are, in the address's fragment: no server hears of it, so it opens without a network. A label's code is
 * such an address, or its fragment's parts alone.
 */
import { useSyncExternalStore } from "react";

export type Route =
  | { readonly view: "find" | "day" | "holds" | "queue" }
  /** `sum` stands on the label: it tells whether the piece is still the one that was drawn. */
  | { readonly view: "piece"; readonly mark: string; readonly sum?: string }
  | { readonly view: "hold"; readonly face: string; readonly point: string }
  | { readonly view: "survey" | "openings"; readonly face: string };

const MARK = /^[A-Za-z][A-Za-z0-9.-]{0,47}$/;

export function routeOf(fragment: string): Route {
  const parts = fragment.replace(/^#/, "").split("/").map(decoded);
  const [view, first = "", second = "", third] = parts;
  if (view === "piece" && MARK.test(first)) {
    // Between mark and sum a label names its revision.
    return { view, mark: first, ...(third === undefined ? {} : { sum: third }) };
  }
  if (view === "hold" && first !== "" && second !== "") return { view, face: first, point: second };
  if ((view === "survey" || view === "openings") && first !== "") return { view, face: first };
  return view === "day" || view === "holds" || view === "queue" ? { view } : { view: "find" };
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return "";
  }
}

export function fragmentOf(route: Route): string {
  const parts =
    route.view === "piece"
      ? [route.view, route.mark]
      : route.view === "hold"
        ? [route.view, route.face, route.point]
        : route.view === "survey" || route.view === "openings"
          ? [route.view, route.face]
          : [route.view];
  return `#${parts.map(encodeURIComponent).join("/")}`;
}

/** Where the code of a label leads: an address of these pages, or mark, revision and sum with spaces between. */
export function routeOfCode(code: string): Route | undefined {
  const hash = code.indexOf("#piece/");
  if (hash >= 0) {
    const route = routeOf(code.slice(hash));
    return route.view === "piece" ? route : undefined;
  }
  const [mark = "", , sum] = code.trim().split(/\s+/);
  return MARK.test(mark) ? { view: "piece", mark, ...(sum === undefined ? {} : { sum }) } : undefined;
}

export function go(route: Route): void {
  location.hash = fragmentOf(route);
}

function heard(hear: () => void): () => void {
  addEventListener("hashchange", hear);
  return () => removeEventListener("hashchange", hear);
}

export function useFragment(): string {
  return useSyncExternalStore(heard, () => location.hash);
}
