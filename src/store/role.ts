/** What people may do. */

/** `office` everything; `site` reads, and adds what happened; `reader` reads. */
export const ROLES = ["office", "site", "reader"] as const;
export type Role = (typeof ROLES)[number];
