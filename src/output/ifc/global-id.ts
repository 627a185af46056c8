/** Global ids: 128 bits made from a name, in the 64 signs of IFC. The same name gives the same id, on every machine. */

const SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$";

export function globalId(name: string): string {
  let bits = 0n;
  for (let word = 0; word < 4; word++) bits = (bits << 32n) | BigInt(mixed(name, word));
  let id = "";
  // 22 signs of six bits, the first of two.
  for (let i = 0; i < 22; i++) {
    id = SIGNS[Number(bits & 63n)] + id;
    bits >>= 6n;
  }
  return id;
}

/** Thirty-two bits of a name (FNV-1a, then the finisher of Murmur3; both in the public domain), another for each seed. */
function mixed(name: string, seed: number): number {
  let hash = (0x811c9dc5 ^ Math.imul(seed + 1, 0x9e3779b1)) >>> 0;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193) >>> 0;
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
