/** The smallest pictures of each kind: one dark dot. */

const bytes = (base64: string): Uint8Array => new Uint8Array(Buffer.from(base64, "base64"));

export const PNG = bytes(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==",
);
export const WEBP = bytes("UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==");
/** Its head alone: nothing here decodes it. */
export const JPEG = bytes("/9j/4AAQSkZJRgABAQEAYABgAAD/2wBDAAEBAQEBAQEBAQEBAQEBAQEBAQ==");
