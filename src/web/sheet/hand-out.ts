/** Hands a file to the browser's downloads: a page may not write to the disk by itself. */
export function handOut(
  { name, text }: { readonly name: string; readonly text: string },
  type: string,
): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
