/** The server's answers that the page asks for. */

export interface ProjectFile {
  readonly name: string;
  readonly text: string;
}

export interface WrittenDocument {
  readonly name: string;
  readonly bytes: number;
}

/** Undefined where the server has no project or cannot be reached. */
export async function fetchProject(): Promise<ProjectFile | undefined> {
  return fetchJson<ProjectFile>("/api/project");
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
