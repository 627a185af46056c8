/** Pictures by the SHA-256 of their bytes: in the browser first, and at the server as soon as it takes them. */
import { nameOf } from "./hash.ts";
import { heldPicture, holdPicture, unsentPictures } from "./keep.ts";

const at = (name: string): string => `/api/attachments/${name}`;

/** Keeps a picture. @returns its name; undefined where neither the browser nor the server took it */
export async function keepPicture(blob: Blob): Promise<string | undefined> {
  const name = await nameOf(await blob.arrayBuffer());
  const held = await holdPicture(name, { blob, sent: false });
  const sent = await send(name, blob);
  return held || sent ? name : undefined;
}

/** A picture from the browser, or else the server; undefined where neither has it. */
export async function pictureOf(name: string): Promise<Blob | undefined> {
  const held = await heldPicture(name);
  if (held) return held.blob;
  const answer = await fetch(at(name)).catch(() => undefined);
  if (!answer?.ok) return undefined;
  const blob = await answer.blob();
  await holdPicture(name, { blob, sent: true });
  return blob;
}

/** Sends what the server has not got yet. */
export async function sendPictures(): Promise<void> {
  for (const name of await unsentPictures()) {
    const held = await heldPicture(name);
    // Where one does not get through, none will.
    if (held && !(await send(name, held.blob))) return;
  }
}

async function send(name: string, blob: Blob): Promise<boolean> {
  const answer = await fetch(at(name), { method: "PUT", body: blob }).catch(() => undefined);
  if (!answer?.ok) return false;
  await holdPicture(name, { blob, sent: true });
  return true;
}
