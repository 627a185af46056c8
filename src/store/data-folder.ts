/** Where a user's own data lies, by the conventions of each system. */
import { join } from "node:path";

export interface System {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The user's home folder. */
  readonly home: string;
}

/**
 * The folder named by `OUTERLEAF_DATA`, else `outerleaf` in the system's folder for such data.
 * Source: XDG Base Directory Specification 0.8 (a relative `XDG_DATA_HOME` counts as none); on Windows `%LOCALAPPDATA%`;
 * on macOS `~/Library/Application Support`.
 */
export function dataFolder({ platform, env, home }: System): string {
  if (env.OUTERLEAF_DATA) return env.OUTERLEAF_DATA;
  if (platform === "win32") return join(env.LOCALAPPDATA || join(home, "AppData", "Local"), "outerleaf");
  if (platform === "darwin") return join(home, "Library", "Application Support", "outerleaf");
  const named = env.XDG_DATA_HOME;
  return join(named?.startsWith("/") ? named : join(home, ".local", "share"), "outerleaf");
}
