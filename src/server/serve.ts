/** Listening on loopback. */
import type { Server } from "node:http";
import { createAdaptorServer } from "@hono/node-server";
import type { Hono } from "hono";
import { type Message, message } from "../text/message.ts";
import { type AppOptions, createApp, KEPT_AS } from "./app.ts";
import { closed, listen, nextFree } from "./listen.ts";

export interface ServeOptions extends AppOptions {
  /** Loopback only: the project is nobody else's business. */
  readonly host?: "127.0.0.1" | "::1";
  /** 0 takes any free port; a busy one is passed over for the next. */
  readonly port: number;
}

export interface Serving {
  readonly url: string;
  readonly port: number;
  /** What to tell the person who started it: the address, and where the port they asked for was taken. */
  readonly says: readonly Message[];
  close(): Promise<void>;
}

/** Starts the server; undefined where no port from the one asked for on is free. */
export async function serve({
  host = "127.0.0.1",
  port,
  ...options
}: ServeOptions): Promise<Serving | undefined> {
  const app = createApp(options);
  return nextFree(port, async (tried) => {
    const server = createAdaptorServer({ fetch: app.fetch }) as Server;
    const found = await listen(server, { host, port: tried });
    if (found === undefined) return undefined;
    const url = `http://${host === "::1" ? "[::1]" : host}:${found}/`;
    // What the page asks first is made while the browser is still on its way.
    setImmediate(() => void warmUp(app, url));
    const moved = port !== 0 && found !== port;
    return {
      url,
      port: found,
      says: [
        ...(moved ? [message("page.server.port-busy", { asked: String(port), port: String(found) })] : []),
        message("page.server.open", { url }),
      ],
      close: () => closed(server),
    };
  });
}

async function warmUp(app: Hono, url: string): Promise<void> {
  const design = await app.request(`${url}api/design`);
  const project = design.headers.get(KEPT_AS);
  // A journal of years that nobody has put by folded takes most of a second to be read through, and then no longer.
  if (project !== null) await app.request(`${url}api/projects/${project}/site/opening`);
}
