/** Keeps the sun of places by everything that it was made from, so that an edit of the wall does not make it again. */
import { clearYear } from "./clear-year.ts";
import type { LightSite } from "./model.ts";
import type { SunTable } from "./sun-table.ts";

export interface SunMemo {
  readonly recall: (site: LightSite) => SunTable;
}

/** Remembers the latest places, up to `places` of them. */
export function createSunMemo({ places }: { readonly places: number }): SunMemo {
  const kept = new Map<string, SunTable>();
  return {
    recall: (site) => {
      const { latitudeDeg, longitudeDeg, air, groundShare } = site;
      const key = JSON.stringify([latitudeDeg, longitudeDeg, air, groundShare]);
      const table = kept.get(key) ?? clearYear(site);
      kept.delete(key);
      kept.set(key, table);
      for (const oldest of kept.keys()) {
        if (kept.size <= places) break;
        kept.delete(oldest);
      }
      return table;
    },
  };
}
