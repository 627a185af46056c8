/** What is kept off the sheet. */
import type { Finding } from "../../findings/finding.ts";

/** Why a file or an edit is not on the sheet; the design before it stays. */
export type Refused =
  | { readonly kind: "refused" | "edit"; readonly name: string; readonly findings: readonly Finding[] }
  | { readonly kind: "broken"; readonly name: string }
  /** `older`: nothing of an older revision can be edited; `gone`: one that is not to be had. */
  | { readonly kind: "absent" | "older" | "gone" };
