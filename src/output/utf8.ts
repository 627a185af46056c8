/** Text as bytes. */

/** The core has no encoder of its platform: code points by hand (RFC 3629). */
export function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3);
  let end = 0;
  const more = (code: number, shift: number): number => 0x80 | ((code >> shift) & 0x3f);
  for (let at = 0; at < text.length; at++) {
    const code = text.codePointAt(at) as number;
    if (code < 0x80) bytes[end++] = code;
    else if (code < 0x800) {
      bytes[end++] = 0xc0 | (code >> 6);
      bytes[end++] = more(code, 0);
    } else if (code < 0x10000) {
      bytes[end++] = 0xe0 | (code >> 12);
      bytes[end++] = more(code, 6);
      bytes[end++] = more(code, 0);
    } else {
      // Two units of the text: four bytes.
      at++;
      bytes[end++] = 0xf0 | (code >> 18);
      bytes[end++] = more(code, 12);
      bytes[end++] = more(code, 6);
      bytes[end++] = more(code, 0);
    }
  }
  return bytes.slice(0, end);
}
