/** What kind of picture bytes are, by their first bytes alone: a name or a header from outside proves nothing. */

export type PictureType = "image/jpeg" | "image/png" | "image/webp";

/**
 * Undefined for anything but the three that phones make.
 * Source: ITU-T T.81 B.1.1.3 (SOI, then the next marker); W3C PNG (Third Edition) 5.2; RFC 9649 2.3 and 2.4 (WebP in RIFF).
 */
export function pictureType(bytes: Uint8Array): PictureType | undefined {
  const begins = (signature: readonly number[], at = 0): boolean =>
    signature.every((byte, i) => bytes[at + i] === byte);
  if (begins([0xff, 0xd8, 0xff])) return "image/jpeg";
  if (begins([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return "image/png";
  if (begins(ascii("RIFF")) && begins(ascii("WEBPVP8"), 8)) return "image/webp";
  return undefined;
}

function ascii(text: string): number[] {
  return [...text].map((sign) => sign.charCodeAt(0));
}
