/** Files as the user names them: read whole, with a clear word where that does not work. */
import { readFile, stat } from "node:fs/promises";
import { resolve } from "node:path";
import { type Message, message } from "../text/message.ts";
import type { Refusal } from "./answer.ts";

/** Project files are some hundred kilobytes; this keeps a wrong file from filling the memory. */
const LARGEST_BYTES = 50_000_000;

export interface FileText {
  /** As the user names it. */
  readonly name: string;
  readonly text: string;
  readonly bytes: Uint8Array;
}

/** @param cwd the folder that `name` is given from */
export async function readText(name: string, cwd: string): Promise<FileText | Refusal> {
  const path = resolve(cwd, name);
  try {
    const found = await stat(path);
    if (found.isDirectory()) return unreadable(name, message("cli.file.is-folder"));
    if (found.size > LARGEST_BYTES) {
      return unreadable(name, message("cli.file.too-large", { megabytes: LARGEST_BYTES / 1e6 }));
    }
    const bytes = await readFile(path);
    return { name, bytes, text: new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes) };
  } catch (error) {
    return unreadable(name, systemReason(error));
  }
}

function unreadable(name: string, why: Message): Refusal {
  return {
    refused: message("cli.refused.file-unreadable", { file: name, why }),
    hint: message("cli.hint.file-path"),
  };
}

/** Why the system did not do as asked, by its error code. */
export function systemReason(error: unknown): Message {
  const code = typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
  switch (code) {
    case "ENOENT":
      return message("cli.file.missing");
    case "EACCES":
    case "EPERM":
      return message("cli.file.not-allowed");
    case "EEXIST":
    case "ENOTEMPTY":
      return message("cli.file.exists");
    case "EISDIR":
      return message("cli.file.is-folder");
    case "ENOTDIR":
      return message("cli.file.not-folder");
    case "ENOSPC":
      return message("cli.file.disk-full");
    case "EROFS":
      return message("cli.file.read-only");
    case "EBUSY":
      return message("cli.file.busy");
    default:
      if (error instanceof Error && code !== "") return message("cli.file.system", { what: error.message });
      throw error;
  }
}
