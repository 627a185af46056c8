/** A file for another program, made by a worker of its own: it loads the writers, and is then let go. */
import type { ExchangeWish } from "../../output/exchange-files.ts";
import type { Reader } from "../../text/say.ts";
import { askOnce } from "./once.ts";

export interface ExchangeRequest {
  readonly name: string;
  readonly document: unknown;
  readonly reader: Reader;
  readonly wish: ExchangeWish;
}

/** Undefined where the program failed, or where there is no such file. */
export type ExchangeReply = { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> } | undefined;

export function writeExchange(request: ExchangeRequest): Promise<ExchangeReply> {
  const worker = new Worker(new URL("./exchange.worker.ts", import.meta.url), { type: "module" });
  return askOnce<ExchangeRequest, ExchangeReply>(worker, request).answer;
}
