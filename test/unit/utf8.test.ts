/** Text as bytes, against the platform's own encoder. */
import { expect, it } from "vitest";
import { utf8 } from "../../src/output/utf8.ts";

it.each(["", "plain", "é × → ⌀ λ", "𝄞 and 😀", "\u007f\u0080\u07ff\u0800\uffff\u{10000}\u{10ffff}"])(
  "%s",
  (text) => {
    expect(utf8(text)).toEqual(new Uint8Array(new TextEncoder().encode(text)));
  },
);
