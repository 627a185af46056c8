/** Files as one ZIP archive, written as they come. Every entry bears the same time, so that the same files give the same bytes. */
import { Zip, ZipDeflate } from "fflate";
import { bytesOf, gathered, type Piece } from "./pieces.ts";

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

export interface PiecesOfFile {
  readonly name: string;
  readonly pieces: Iterable<Piece>;
}

/** An archive of files that are made as it is written, in the pieces in which it comes. */
export function* zipped(files: Iterable<PiecesOfFile>): Generator<Uint8Array> {
  let ready: Uint8Array[] = [];
  const handed = (): Uint8Array[] => {
    const chunks = ready;
    ready = [];
    return chunks;
  };
  const archive = archiveTo((chunk) => ready.push(chunk));
  for (const { name, pieces } of files) {
    const file = archive.begin(name);
    for (const piece of gathered(pieces)) {
      file.add(bytesOf(piece));
      yield* handed();
    }
    file.end();
    yield* handed();
  }
  archive.end();
  yield* handed();
}
