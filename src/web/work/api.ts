/** The server's answers that the page asks for. */
import type { DesignAnswer } from "./messages.ts";

export interface WrittenDocument {
  readonly name: string;
  readonly bytes: number;
}

/** The served project, designed; undefined where the server has none or cannot be reached. */
export async function fetchDesign(): Promise<DesignAnswer | undefined> {
  return fetchJson<DesignAnswer>("/api/design");
}

export async function fetchDocuments(): Promise<readonly WrittenDocument[]> {
  const answer = await fetchJson<{ documents: readonly WrittenDocument[] }>("/api/documents");
  return answer?.documents ?? [];
}

async function fetchJson<Answer>(address: string): Promise<Answer | undefined> {
  try {
    const response = await fetch(address);
    return response.ok ? ((await response.json()) as Answer) : undefined;
  } catch {
    return undefined;
  }
}
