/** Files as one ZIP archive, written as they come. Every entry bears the same time, so that the same files give the same bytes. */
import { Zip, ZipDeflate } from "fflate";

export interface ArchiveFile {
  add(chunk: Uint8Array): void;
  end(): void;
}

export interface Archive {
  /** Files stand in the order in which they are begun; what is added to one waits for those before it. */
  begin(name: string): ArchiveFile;
  /** Once every file is ended. */
  end(): void;
}

/** The first moment that the format knows, as it is read wherever the archive is made. */
const MOMENT = "1980-01-01T00:00:00";

export function archiveTo(take: (chunk: Uint8Array) => void): Archive {
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    take(chunk);
  });
  return {
    begin(name) {
      const file = new ZipDeflate(name, { level: 6 });
      file.mtime = MOMENT;
      zip.add(file);
      return {
        add: (chunk) => file.push(chunk),
        end: () => file.push(new Uint8Array(0), true),
      };
    },
    end: () => zip.end(),
  };
}
