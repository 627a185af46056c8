/** Documents that are made piece by piece, so that no more than a piece of a large one is held. */
import { utf8 } from "./utf8.ts";

/** Text, which is written as UTF-8, or bytes. No piece of text ends within a character. */
export type Piece = string | Uint8Array;

/** As many letters or bytes are handed on at once: few enough to be nothing, enough for a disk to be asked seldom. */
const ENOUGH = 1 << 16;

/** The same document in fewer pieces. */
export function* gathered(pieces: Iterable<Piece>): Generator<Piece> {
  let texts: string[] = [];
  let chunks: Uint8Array[] = [];
  let size = 0;
  const together = (): Piece => {
    const whole = texts.length > 0 ? texts.join("") : joined(chunks);
    texts = [];
    chunks = [];
    size = 0;
    return whole;
  };
  for (const piece of pieces) {
    const isOfOneKind = typeof piece === "string" ? chunks.length === 0 : texts.length === 0;
    if (size > 0 && (!isOfOneKind || size >= ENOUGH)) yield together();
    if (typeof piece === "string") texts.push(piece);
    else chunks.push(piece);
    size += piece.length;
  }
  if (size > 0) yield together();
}

export function bytesOf(piece: Piece): Uint8Array {
  return typeof piece === "string" ? utf8(piece) : piece;
}

/** The whole document. */
export function allBytes(pieces: Iterable<Piece>): Uint8Array<ArrayBuffer> {
  return joined(Array.from(gathered(pieces), bytesOf));
}

export function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

/** As `map`, each made when its turn comes and anew each time: no more than one is held. */
export function mapped<One, Made>(all: Iterable<One>, make: (one: One) => Made): Iterable<Made> {
  return {
    *[Symbol.iterator]() {
      for (const one of all) yield make(one);
    },
  };
}
