/** Hashes, as the server makes them. */

function sha256(text: string): Promise<string> {
  return nameOf(new TextEncoder().encode(text));
}

/** The name of bytes: their SHA-256 in hexadecimal. */
export async function nameOf(content: BufferSource): Promise<string> {
  const bytes = await crypto.subtle.digest("SHA-256", content);
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Of a document's JSON without spaces: the same document is the same revision. */
export function hashOf(document: unknown): Promise<string> {
  return sha256(JSON.stringify(document));
}

/** The id under which the edits of a file are kept that was opened on the page; a page does not learn where it lies. */
export async function idOf(name: string, title: string): Promise<string> {
  return (await sha256(`${name}\n${title}`)).slice(0, 24);
}
