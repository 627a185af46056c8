/** The queue, the journal as far as it is known here, and the pictures, in the browser's database. */
import { type Entry, entryShape } from "../../../site/journal/entry.ts";
import { answerOf, transact } from "./database.ts";
import type { QueueStore, Telling, Waiting } from "./model.ts";

interface Device {
  /** 16 hexadecimal digits, drawn once. */
  readonly name: string;
  /** How much it told. */
  readonly told: number;
}

interface HeldPhoto {
  readonly picture: Blob;
  readonly hasArrived: boolean;
}

export interface KnownEntry {
  readonly number: number;
  readonly who: string;
  readonly time: string;
  readonly entry: Entry;
}

const DEVICE = "device";

function newDevice(): Device {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return { name: Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join(""), told: 0 };
}

/**
 * Puts an entry into the queue: the device's count and the entry in one transaction, so that no two entries bear one name.
 * @param replaces a refused one that is told anew, and goes
 * @returns false where the entry is none that the journal takes; rejects where the browser keeps nothing
 */
export function tell(project: string, telling: Telling, replaces?: Waiting): Promise<boolean> {
  return transact(["device", "queue"], "readwrite", async (within) => {
    const devices = within.objectStore("device");
    const device = ((await answerOf(devices.get(DEVICE))) as Device | undefined) ?? newDevice();
    const told = device.told + 1;
    const read = entryShape.safeParse({
      ...telling,
      id: `${device.name}-${told}`,
      told: new Date().toISOString(),
    });
    if (!read.success) return false;
    devices.put({ ...device, told } satisfies Device, DEVICE);
    const queue = within.objectStore("queue");
    queue.add({ project, entry: read.data } satisfies Omit<Waiting, "place">);
    if (replaces) queue.delete(replaces.place);
    return true;
  });
}

export const keptQueue: QueueStore = {
  waiting: () =>
    transact(
      ["queue"],
      "readonly",
      (within) => answerOf(within.objectStore("queue").getAll()) as Promise<Waiting[]>,
    ),
  arrived: ({ place, project, entry }, number) =>
    transact(["queue", "journal"], "readwrite", async (within) => {
      within.objectStore("queue").delete(place);
      const known: KnownEntry = { number, who: "", time: "", entry };
      within.objectStore("journal").put(known, [project, number]);
    }),
  refused: (waiting, why) =>
    transact(["queue"], "readwrite", async (within) => {
      within.objectStore("queue").put({ ...waiting, refused: why } satisfies Waiting);
    }),
  renameDevice: () =>
    transact(["device"], "readwrite", async (within) => {
      within.objectStore("device").put(newDevice(), DEVICE);
    }),
  photoToSend: (sha256) =>
    transact(["photos"], "readonly", async (within) => {
      const held = (await answerOf(within.objectStore("photos").get(sha256))) as HeldPhoto | undefined;
      return held && !held.hasArrived ? held.picture : undefined;
    }),
  photoArrived: (sha256) =>
    transact(["photos"], "readwrite", async (within) => {
      const photos = within.objectStore("photos");
      const held = (await answerOf(photos.get(sha256))) as HeldPhoto | undefined;
      if (held) photos.put({ ...held, hasArrived: true } satisfies HeldPhoto, sha256);
    }),
};

export function keepPhoto(sha256: string, picture: Blob): Promise<void> {
  return transact(["photos"], "readwrite", async (within) => {
    const photos = within.objectStore("photos");
    const held = await answerOf(photos.getKey(sha256));
    if (held === undefined) photos.put({ picture, hasArrived: false } satisfies HeldPhoto, sha256);
  });
}
