/** JSON as every command and document prints it: two spaces a level, a newline at the end. */
export function printJson(value: unknown): string {
  return `${plain(value)}\n`;
}

/** A document whose lists need not be there at once. */
export type Listed<Whole> = {
  readonly [Key in keyof Whole]: Whole[Key] extends readonly (infer One)[] ? Iterable<One> : Whole[Key];
};

/** What `printJson` prints of the collected document, a piece for each member of its lists. */
export function* jsonPieces(document: object): Generator<string> {
  yield "{";
  let before = "\n";
  for (const [name, value] of Object.entries(document)) {
    if (value === undefined) continue;
    yield `${before}  ${JSON.stringify(name)}: `;
    before = ",\n";
    if (isList(value)) yield* listPieces(value);
    else yield plain(value, "  ");
  }
  yield before === "\n" ? "}\n" : "\n}\n";
}

function* listPieces(list: Iterable<unknown>): Generator<string> {
  let before = "[\n";
  for (const one of list) {
    yield `${before}    ${plain(one, "    ")}`;
    before = ",\n";
  }
  yield before === "[\n" ? "[]" : "\n  ]";
}

/** Its lists as arrays. */
export function collected<Whole>(document: Listed<Whole>): Whole {
  return Object.fromEntries(
    Object.entries(document).map(([name, value]) => [name, isList(value) ? [...value] : value]),
  ) as Whole;
}

function isList(value: unknown): value is Iterable<unknown> {
  return typeof value === "object" && value !== null && Symbol.iterator in value;
}

/** No text of JSON holds a line break: those there are stand between its parts. */
function plain(value: unknown, indent = ""): string {
  const text = JSON.stringify(value, null, 2);
  return indent === "" ? text : text.replaceAll("\n", `\n${indent}`);
}
