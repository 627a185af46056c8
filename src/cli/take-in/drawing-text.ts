/** Drawings and models of these days are UTF-8; older ones are in the code page of their system, most often Windows 1252. */
export function drawingText(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
