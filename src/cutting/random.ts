/** A seeded source of numbers in [0, 1): Marsaglia's xorshift with shifts 13, 17, 5 (J. Stat. Software 8 (14), 2003). */
export function seeded(seed: number): () => number {
  let state = Math.trunc(Math.abs(seed)) % 0xffffffff || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 0x100000000;
  };
}

/** A whole number from 0 up to but not including `end`. */
export function pick(random: () => number, end: number): number {
  return Math.min(end - 1, Math.floor(random() * end));
}
