/** TEXTDATA = %x20-21 / %x23-2B / %x2D-7E: no quote, no comma, no control character. */
const TEXT_DATA = /[\x20-\x21\x23-\x2B\x2D-\x7E\u0080-\u{10FFFF}]*/uy;

/**
 * Reads CSV by the grammar of RFC 4180, section 2, and shares no code with the writer. Beyond the RFC it lets any character
 * from U+0080 up stand as text, since our files are UTF-8 (RFC 7111 makes that the default).
 */
export function readCsv(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  const fault = (what: string): Error => new Error(`${what} at ${at}: ${text.slice(at, at + 20)}`);

  const escaped = (): string => {
    let value = "";
    at += 1;
    for (;;) {
      if (at >= text.length) throw fault("quote left open");
      if (text[at] !== '"') value += text[at++];
      else if (text[at + 1] === '"') {
        value += '"';
        at += 2;
      } else {
        at += 1;
        return value;
      }
    }
  };
  const nonEscaped = (): string => {
    TEXT_DATA.lastIndex = at;
    const value = TEXT_DATA.exec(text)?.[0] ?? "";
    at += value.length;
    return value;
  };
  while (at < text.length) {
    const record: string[] = [];
    for (;;) {
      record.push(text[at] === '"' ? escaped() : nonEscaped());
      if (text[at] !== ",") break;
      at += 1;
    }
    records.push(record);
    if (at === text.length) break;
    if (text.slice(at, at + 2) !== "\r\n") throw fault("neither comma nor CRLF");
    at += 2;
  }
  return records;
}

/** Records as objects by the titles of the first; every record must have as many fields as there are titles. */
export function readTable(text: string): Record<string, string>[] {
  const [titles = [], ...records] = readCsv(text);
  if (new Set(titles).size !== titles.length) throw new Error(`a title stands twice: ${titles.join()}`);
  return records.map((record) => {
    if (record.length !== titles.length) throw new Error(`${record.length} fields: ${record.join()}`);
    return Object.fromEntries(titles.map((title, i) => [title, record[i] ?? ""]));
  });
}
