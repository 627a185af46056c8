/** Pictures made small enough to be kept by the hundred. */

/** Pixels of the longer side: a nail's head is still seen on a board of four metres. */
const LONGEST = 2000;
const QUALITY = 0.82;

/** The picture as a JPEG, upright as its camera held it; undefined where the browser cannot read the file as one. */
export async function shrunk(file: Blob): Promise<Blob | undefined> {
  const image = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => undefined);
  if (!image) return undefined;
  const part = Math.min(1, LONGEST / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.width * part));
  canvas.height = Math.max(1, Math.round(image.height * part));
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob ?? undefined), "image/jpeg", QUALITY));
}
