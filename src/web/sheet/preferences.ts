/** How this reader likes the sheet: kept by the browser, never in the project. */
import type { Reader } from "../../text/say.ts";

export type Light = "auto" | "day" | "night";

export interface Preferences {
  /** What the project says counts until the reader chooses. */
  readonly language?: Reader["language"];
  readonly units?: Reader["units"];
  readonly light: Light;
  /** The walk round the sheet was offered on an earlier visit. */
  readonly offered?: true;
}

const PLACE = "outerleaf.sheet";

export function readPreferences(): Preferences {
  const held = readHeld();
  return {
    light: held.light === "day" || held.light === "night" ? held.light : "auto",
    ...(held.language === "en" || held.language === "fr" ? { language: held.language } : {}),
    ...(held.offered === true ? { offered: true } : {}),
    ...(held.units === "mm" || held.units === "feet-inch" ? { units: held.units } : {}),
  };
}

export function keepPreferences(preferences: Preferences): void {
  try {
    localStorage.setItem(PLACE, JSON.stringify(preferences));
  } catch {
    // A browser that keeps nothing shows the project's own choice next time.
  }
}

function readHeld(): Record<string, unknown> {
  try {
    const held: unknown = JSON.parse(localStorage.getItem(PLACE) ?? "{}");
    return typeof held === "object" && held !== null ? (held as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
