/** Hands a file to the browser's downloads: a page may not write to the disk by itself. */
export function handOut(
  { name, content }: { readonly name: string; readonly content: string | Uint8Array<ArrayBuffer> | Blob },
  type: string,
): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
