/** Pictures made small enough to be kept by the hundred. */

const QUALITY = 0.82;

/**
 * The picture as a JPEG, upright as its camera held it; undefined where the browser cannot read the file as one.
 * @param longest pixels of its longer side at most
 */
export async function shrunk(file: Blob, longest: number): Promise<Blob | undefined> {
  const image = await createImageBitmap(file, { imageOrientation: "from-image" }).catch(() => undefined);
  if (!image) return undefined;
  const part = Math.min(1, longest / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(image.width * part));
  canvas.height = Math.max(1, Math.round(image.height * part));
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return new Promise((resolve) => canvas.toBlob((blob) => resolve(blob ?? undefined), "image/jpeg", QUALITY));
}
