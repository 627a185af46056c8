/** Files as one ZIP archive, written as they come. Every entry bears the same time, so that the same files give the same bytes. */
import { Zip, ZipDeflate } from "fflate";

export interface Archive {
  /** Begins a file: what is added is its content, until the next is begun. */
  begin(name: string): (chunk: Uint8Array) => void;
  /** The last file is whole, and the archive with it. */
  end(): void;
}

/** The first moment that the format knows, as it is read wherever the archive is made. */
const MOMENT = "1980-01-01T00:00:00";

export function archiveTo(take: (chunk: Uint8Array) => void): Archive {
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    take(chunk);
  });
  let open: ZipDeflate | undefined;
  const close = (): void => {
    open?.push(new Uint8Array(0), true);
    open = undefined;
  };
  return {
    begin(name) {
      close();
      const file = new ZipDeflate(name, { level: 6 });
      file.mtime = MOMENT;
      zip.add(file);
      open = file;
      return (chunk) => file.push(chunk);
    },
    end() {
      close();
      zip.end();
    },
  };
}
