/** The text of a chosen file. Drawings since 2007 are UTF-8; older ones are in the code page of their system, most often Windows 1252. */
export async function textOf(file: File): Promise<string> {
  const bytes = await file.arrayBuffer();
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
