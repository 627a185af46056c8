/** JSON as every command and document prints it: two spaces a level, a newline at the end. */
export function printJson(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
