/** Pictures taken on site: made small, and named by their bytes. */
import { shrunk } from "../pictures/shrink.ts";
import { nameOf } from "../work/hash.ts";
import { keepPhoto } from "./queue/kept-queue.ts";

/** Pixels of the longer side, for a site's network: a scale's marks are still read on it. */
const LONGEST = 1600;

export interface TakenPhoto {
  readonly sha256: string;
  readonly url: string;
}

/** Kept in the browser until it is sent; undefined where the file is no picture or the browser keeps nothing. */
export async function takePhoto(file: Blob): Promise<TakenPhoto | undefined> {
  try {
    const picture = await shrunk(file, LONGEST);
    if (!picture) return undefined;
    const sha256 = await nameOf(await picture.arrayBuffer());
    await keepPhoto(sha256, picture);
    return { sha256, url: URL.createObjectURL(picture) };
  } catch {
    return undefined;
  }
}
