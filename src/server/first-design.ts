/** The served project, designed: the page shows it at once, and loads its own designer afterwards. */
import { designFile, type FileDesign } from "../design.ts";

export interface FileText {
  /** As findings call the file. */
  readonly name: string;
  readonly text: string;
}

/** Designs a file when it is first asked for, and again only when its text has changed. The answer is JSON. */
export function firstDesign(): (file: FileText) => Uint8Array {
  let made: { readonly file: FileText; readonly bytes: Uint8Array } | undefined;
  return (file) => {
    if (made?.file.text !== file.text || made.file.name !== file.name) {
      made = { file, bytes: new TextEncoder().encode(`${JSON.stringify(designOf(file))}\n`) };
    }
    return made.bytes;
  };
}

/** A mistake of the program's is told as such, so that the page does not say the file is missing. */
function designOf(file: FileText): FileDesign | { readonly kind: "broken"; readonly name: string } {
  try {
    return designFile(file);
  } catch {
    return { kind: "broken", name: file.name };
  }
}
