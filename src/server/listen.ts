/** Ports: the one asked for, or the next that is free. */
import type { Server } from "node:net";

/** How many ports are tried from the one asked for. */
const TRIES = 20;

/** What `open` gives for the first port that it can have; 0 takes any free port. */
export async function nextFree<Opened>(
  port: number,
  open: (tried: number) => Promise<Opened | undefined>,
): Promise<Opened | undefined> {
  const last = port === 0 ? 0 : Math.min(port + TRIES - 1, 65_535);
  for (let tried = port; tried <= last; tried++) {
    const opened = await open(tried);
    if (opened !== undefined) return opened;
  }
  return undefined;
}

/** The port that it listens on, or undefined where that port is taken or not allowed. */
export function listen(
  server: Server,
  { host, port }: { readonly host: string; readonly port: number },
): Promise<number | undefined> {
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

export function closed(server: Server & { closeAllConnections(): void }): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
