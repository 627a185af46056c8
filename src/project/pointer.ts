/** JSON Pointers (RFC 6901) into a document. */

export type Path = readonly (string | number)[];

/** The pointer of a path: `/faces/0/id`; the whole document is the empty text. */
export function pointerOf(path: Path): string {
  return path.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}

/** The steps of a pointer, or undefined where it is not one: it must start with `/`, and `~` stands before 0 or 1 only. */
export function parsePointer(pointer: string): string[] | undefined {
  if (pointer === "") return [];
  if (!pointer.startsWith("/") || /~(?![01])/.test(pointer)) return undefined;
  return pointer
    .slice(1)
    .split("/")
    .map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));
}

/** What stands at a path, or undefined where nothing does. */
export function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** Whether a value is a group of named fields. */
export function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
