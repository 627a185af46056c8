/** The second listener: every address of this machine, over TLS, for people who signed in. */
import { createServer } from "node:https";
import { createAdaptorServer } from "@hono/node-server";
import { type AppOptions, createApp } from "./app.ts";
import type { Certificate } from "./certificate.ts";
import { closed, listen, nextFree } from "./listen.ts";

export interface LanOptions extends Omit<AppOptions, "guarded"> {
  readonly certificate: Certificate;
  readonly hosts: readonly string[];
  readonly port: number;
}

export interface LanServing {
  readonly port: number;
  close(): Promise<void>;
}

/** As many devices at once, each with some connections. */
const MOST_CONNECTIONS = 1000;

/** Milliseconds in which a request must have come whole: a photo over a poor network takes its time. */
const PATIENCE_MS = 120_000;

/** Undefined where no port from the one asked for on is free. */
export async function serveLan({
  certificate: { key, certificate },
  hosts,
  port,
  ...options
}: LanOptions): Promise<LanServing | undefined> {
  const app = createApp({ ...options, guarded: { hosts: hosts.map(asInHeader) } });
  return nextFree(port, async (tried) => {
    const server = createAdaptorServer({
      fetch: app.fetch,
      createServer,
      serverOptions: { key, cert: certificate, minVersion: "TLSv1.2", requestTimeout: PATIENCE_MS },
    }) as ReturnType<typeof createServer>;
    server.maxConnections = MOST_CONNECTIONS;
    const found = await listen(server, { host: "::", port: tried });
    return found === undefined ? undefined : { port: found, close: () => closed(server) };
  });
}

/** An IPv6 address stands in brackets there (RFC 3986 3.2.2). */
export function asInHeader(host: string): string {
  return host.includes(":") ? `[${host}]` : host;
}
