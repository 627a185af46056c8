/** Who asks, once the door has let them in. It stands with the context: a request is made anew where its body is measured. */
import type { Context } from "hono";
import type { SignedIn } from "../../store/people.ts";

declare module "hono" {
  interface ContextVariableMap {
    /** Absent for whoever sits at this machine. */
    person?: SignedIn;
  }
}

/** As revisions and entries are signed; empty for whoever sits at this machine. */
export function whoOf(context: Context): string {
  return context.get("person")?.name ?? "";
}
