/** What every route that reads or writes the database stands on. */
import type { Store } from "../store/store.ts";

export interface Keeping {
  readonly store: Store;
  readonly now: () => Date;
}
