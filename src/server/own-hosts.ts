/** What this machine is called and where it is reached. */
import { hostname, networkInterfaces } from "node:os";

/** The addresses that other devices may reach, IPv4 first: those are typed and printed. */
export function outsideAddresses(): string[] {
  const all = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  const own = all.filter(({ internal, address }) => !internal && !address.startsWith("fe80:"));
  const of = (family: string): string[] =>
    own.filter((one) => one.family === family).map(({ address }) => address);
  return [...new Set([...of("IPv4"), ...of("IPv6")])];
}

/** Every name that a certificate and a Host header may bear. */
export function ownHosts(): string[] {
  const name = hostname().toLowerCase();
  const names = /^[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?$/.test(name) ? [name, `${name}.local`] : [];
  return ["localhost", "127.0.0.1", ...names, ...outsideAddresses()];
}
