/** Writes a project document back to text. */

/**
 * The document as JSON with two spaces a level and a newline at the end. Keys stay in their order and unknown ones stay
 * at all, so that a file keeps its author's hand.
 */
export function printProject(document: unknown): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}
