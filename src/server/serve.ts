/** Listening on loopback. */
import type { Server } from "node:http";
import { createAdaptorServer } from "@hono/node-server";
import { type Message, message } from "../text/message.ts";
import { type AppOptions, createApp } from "./app.ts";

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

/** How many ports are tried from the one asked for. */
const TRIES = 20;

/** Starts the server; undefined where no port from the one asked for on is free. */
export async function serve({
  host = "127.0.0.1",
  port,
  ...options
}: ServeOptions): Promise<Serving | undefined> {
  const app = createApp(options);
  const last = port === 0 ? 0 : Math.min(port + TRIES - 1, 65_535);
  for (let tried = port; tried <= last; tried++) {
    const server = createAdaptorServer({ fetch: app.fetch }) as Server;
    const found = await listen(server, { host, port: tried });
    if (found === undefined) continue;
    const url = `http://${host === "::1" ? "[::1]" : host}:${found}/`;
    // What the page asks first is made while the browser is still on its way.
    setImmediate(() => void app.request(`${url}api/design`));
    const moved = port !== 0 && found !== port;
    return {
      url,
      port: found,
      says: [
        ...(moved ? [message("page.server.port-busy", { asked: String(port), port: String(found) })] : []),
        message("page.server.open", { url }),
      ],
      close: () => close(server),
    };
  }
  return undefined;
}

/** The port that it listens on, or undefined where that port is taken or not allowed. */
function listen(server: Server, { host, port }: { host: string; port: number }): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE" || error.code === "EACCES") resolve(undefined);
      else reject(error);
    });
    server.listen({ host, port, exclusive: true }, () => {
      const address = server.address();
      resolve(typeof address === "object" && address !== null ? address.port : port);
    });
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
