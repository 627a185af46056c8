/** Files as one ZIP archive. Every entry bears the same time, so that the same files give the same bytes. */
import { zipSync } from "fflate";

export interface ArchivedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The first moment that the format knows, as it is read wherever the archive is made. */
const MOMENT = "1980-01-01T00:00:00";

export function zipOf(files: readonly ArchivedFile[]): Uint8Array<ArrayBuffer> {
  return new Uint8Array(
    zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])), { mtime: MOMENT, level: 6 }),
  );
}
