/** Pictures made small enough for a site's network, and named by their bytes. */
import { keepPhoto } from "./queue/kept-queue.ts";

/** Longest side in pixels: a scale's marks are read on it, and it has a few hundred kilobytes. */
const LONGEST = 1600;
const QUALITY = 0.8;

export interface TakenPhoto {
  readonly sha256: string;
  readonly url: string;
}

/** Kept in the browser until it is sent; undefined where the file is no picture or the browser keeps nothing. */
export async function takePhoto(file: Blob): Promise<TakenPhoto | undefined> {
  try {
    const bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
    const by = Math.min(1, LONGEST / Math.max(bitmap.width, bitmap.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(bitmap.width * by);
    canvas.height = Math.round(bitmap.height * by);
    canvas.getContext("2d")?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const picture = await new Promise<Blob | null>((resolve) =>
      canvas.toBlob(resolve, "image/jpeg", QUALITY),
    );
    if (!picture) return undefined;
    const digest = await crypto.subtle.digest("SHA-256", await picture.arrayBuffer());
    const sha256 = Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
    await keepPhoto(sha256, picture);
    return { sha256, url: URL.createObjectURL(picture) };
  } catch {
    return undefined;
  }
}
