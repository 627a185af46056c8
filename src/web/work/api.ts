/** The server's answers that the page asks for. */
import type { DesignAnswer } from "./messages.ts";

export interface WrittenDocument {
  readonly name: string;
  readonly bytes: number;
}

/** The served project and the id under which its edits are kept. */
export type ServedDesign = DesignAnswer & { readonly keptAs?: string };

/** The served project, designed; undefined where the server has none or cannot be reached. */
export async function fetchDesign(): Promise<ServedDesign | undefined> {
  return fetchJson<ServedDesign>("/api/design", (answer, headers) => {
    const keptAs = headers.get("Outerleaf-Kept-As");
    return keptAs === null ? answer : { ...answer, keptAs };
  });
}

export async function fetchDocuments(): Promise<readonly WrittenDocument[]> {
  const answer = await fetchJson<{ documents: readonly WrittenDocument[] }>("/api/documents");
  return answer?.documents ?? [];
}

export async function fetchJson<Answer>(
  address: string,
  withHeaders: (answer: Answer, headers: Headers) => Answer = (answer) => answer,
): Promise<Answer | undefined> {
  try {
    const response = await fetch(address);
    return response.ok ? withHeaders((await response.json()) as Answer, response.headers) : undefined;
  } catch {
    return undefined;
  }
}
