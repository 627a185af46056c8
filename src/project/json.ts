/**
 * Reads JSON text (RFC 8259) and says where and how it is broken, in the same words on every engine; a key that is
 * written twice is a fault here, because nobody can know which of the two was meant.
 */
import { pointerOf } from "./pointer.ts";

export type JsonFaultKind =
  /** nothing but white space */
  | "empty"
  /** the text stops before its last bracket is closed */
  | "end"
  /** a comma before a closing bracket */
  | "comma-too-many"
  /** two entries without a comma between them */
  | "comma-missing"
  /** a key without its colon */
  | "colon-missing"
  /** something else where a key in double quotes belongs */
  | "key-expected"
  /** something else where a value belongs */
  | "value-expected"
  /** a number that JSON does not know: NaN, 01, +1, .5, 1. */
  | "number"
  /** a comment */
  | "comment"
  /** single or curly quotes */
  | "quotes"
  /** text not closed on its line, or a control character in it */
  | "text-open"
  /** a backslash before a sign that has no such form */
  | "escape"
  /** more after the closing bracket */
  | "more"
  /** a key that its group holds already */
  | "key-twice"
  /** nested too deeply */
  | "depth";

export interface JsonFault {
  readonly kind: JsonFaultKind;
  /** Counted from 1. */
  readonly line: number;
  /** Counted from 1, in UTF-16 units. */
  readonly column: number;
  /** Pointer to the innermost value being read. */
  readonly path: string;
  /** What stands there, shortened. */
  readonly found: string;
}

export type JsonResult =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly faults: readonly JsonFault[] };

/** No project nests a tenth as deep; it keeps the reader's own depth bounded. */
const DEEPEST = 100;

/** After so many doubled keys a reader looks at the file, not at the list. */
const MOST_FAULTS = 50;

/** The value of a JSON text, or its faults: all doubled keys, or the first fault that stops the reading. Never throws. */
export function parseJson(text: string): JsonResult {
  const reader = new Reader(text);
  const value = reader.document();
  return reader.faults.length === 0 ? { ok: true, value } : { ok: false, faults: reader.faults };
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /[\p{L}\p{N}_.+-]+/uy;
const SPACE = /[ \t\r\n]*/y;
const WORDS: ReadonlyMap<string, unknown> = new Map<string, unknown>([
  ["true", true],
  ["false", false],
  ["null", null],
]);

class Reader {
  readonly faults: JsonFault[] = [];
  private at = 0;
  private stopped = false;
  private readonly path: (string | number)[] = [];
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  document(): unknown {
    this.space();
    if (this.at === this.text.length) return this.stop("empty");
    const value = this.value();
    this.space();
    if (!this.stopped && this.at < this.text.length) return this.stop(this.isComment() ? "comment" : "more");
    return value;
  }

  private value(): unknown {
    const sign = this.text[this.at];
    if (sign === undefined) return this.stop("end");
    if (sign === "{") return this.group();
    if (sign === "[") return this.list();
    if (sign === '"') return this.string();
    if (this.isComment()) return this.stop("comment");
    if (/['‘’“”«]/.test(sign)) return this.stop("quotes");
    return this.bare();
  }

  private group(): unknown {
    const group: Record<string, unknown> = {};
    if (!this.open()) return undefined;
    while (!this.close("}")) {
      if (this.text[this.at] !== '"') return this.stop(this.keyFault());
      const keyAt = this.at;
      const key = this.string();
      if (this.stopped || key === undefined) return undefined;
      this.path.push(key);
      if (Object.hasOwn(group, key)) this.note("key-twice", keyAt);
      this.space();
      if (this.text[this.at] !== ":")
        return this.stop(this.at === this.text.length ? "end" : "colon-missing");
      this.at += 1;
      this.space();
      const value = this.value();
      if (this.stopped) return undefined;
      // A plain assignment of "__proto__" would change the object's kind instead of adding a key.
      Object.defineProperty(group, key, { value, writable: true, enumerable: true, configurable: true });
      this.path.pop();
      if (!this.between("}")) return undefined;
    }
    return this.stopped ? undefined : group;
  }

  private list(): unknown {
    const list: unknown[] = [];
    if (!this.open()) return undefined;
    while (!this.close("]")) {
      this.path.push(list.length);
      const value = this.value();
      if (this.stopped) return undefined;
      list.push(value);
      this.path.pop();
      if (!this.between("]")) return undefined;
    }
    return this.stopped ? undefined : list;
  }

  private open(): boolean {
    if (this.path.length >= DEEPEST) return this.stop("depth") ?? false;
    this.at += 1;
    this.space();
    return true;
  }

  private close(bracket: "}" | "]"): boolean {
    if (this.text[this.at] !== bracket) return false;
    this.at += 1;
    return true;
  }

  /** Steps over the comma to the next entry; the closing bracket is left for `close`. */
  private between(bracket: "}" | "]"): boolean {
    this.space();
    if (this.text[this.at] === bracket) return true;
    if (this.text[this.at] !== ",") {
      this.stop(this.at === this.text.length ? "end" : this.isComment() ? "comment" : "comma-missing");
      return false;
    }
    const commaAt = this.at;
    this.at += 1;
    this.space();
    if (this.text[this.at] !== bracket) return true;
    this.at = commaAt;
    this.stop("comma-too-many");
    return false;
  }

  private string(): string | undefined {
    const from = this.at;
    let escaped = false;
    for (let at = from + 1; at < this.text.length; at++) {
      const code = this.text.charCodeAt(at);
      if (code === 0x22) {
        this.at = at + 1;
        return escaped
          ? (JSON.parse(this.text.slice(from, at + 1)) as string)
          : this.text.slice(from + 1, at);
      }
      if (code < 0x20) {
        this.at = from;
        return this.stop("text-open");
      }
      if (code !== 0x5c) continue;
      if (!/^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.test(this.text.slice(at + 1, at + 6))) {
        this.at = at;
        return this.stop(at + 1 >= this.text.length ? "end" : "escape");
      }
      escaped = true;
      at += 1;
    }
    this.at = from;
    return this.stop("end");
  }

  private bare(): unknown {
    const word = this.match(WORD);
    if (word === "") return this.stop("value-expected");
    if (WORDS.has(word)) {
      this.at += word.length;
      return WORDS.get(word);
    }
    if (this.match(NUMBER) === word) {
      this.at += word.length;
      return Number(word);
    }
    return this.stop(/^[-+]?(?:[\d.]|NaN$|Infinity$)/.test(word) ? "number" : "value-expected");
  }

  private keyFault(): JsonFaultKind {
    if (this.at === this.text.length) return "end";
    if (this.isComment()) return "comment";
    return /['‘’“”«]/.test(this.text[this.at] ?? "") ? "quotes" : "key-expected";
  }

  private isComment(): boolean {
    return /^(?:\/[/*]|#)/.test(this.text.slice(this.at, this.at + 2));
  }

  private space(): void {
    this.at += this.match(SPACE).length;
  }

  private match(pattern: RegExp): string {
    pattern.lastIndex = this.at;
    return pattern.exec(this.text)?.[0] ?? "";
  }

  private stop(kind: JsonFaultKind): undefined {
    this.stopped = true;
    this.note(kind, kind === "end" ? this.text.length : this.at);
    return undefined;
  }

  private note(kind: JsonFaultKind, at: number): void {
    if (this.faults.length >= MOST_FAULTS) return;
    const before = this.text.slice(0, at).split(/\r\n|\r|\n/);
    this.faults.push({
      kind,
      line: before.length,
      column: (before.at(-1)?.length ?? 0) + 1,
      path: pointerOf(this.path.slice(0, DEEPEST)),
      found: this.text.slice(at, at + 24).split(/[\r\n]/)[0] ?? "",
    });
  }
}
