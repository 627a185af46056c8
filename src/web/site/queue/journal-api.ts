/** The server's journal and pictures, as the site pages ask for them. */

import type { KnownEntry } from "./kept-queue.ts";
import type { Answer, EntryAnswer, Line } from "./model.ts";

const SIGNED_OUT: readonly number[] = [401, 403];

/** Not the fault of what was sent: it is tried again. */
const LATER: readonly number[] = [408, 421, 425, 429];

async function asked<Done>(
  address: string,
  init: RequestInit,
  read: (response: Response) => Promise<Done>,
): Promise<Answer<Done>> {
  try {
    const response = await fetch(address, init);
    if (response.ok) return { kind: "done", done: await read(response) };
    if (SIGNED_OUT.includes(response.status)) return { kind: "signed-out" };
    if (response.status >= 500 || LATER.includes(response.status)) return { kind: "away" };
    return { kind: "refused", why: await whyOf(response) };
  } catch {
    return { kind: "away" };
  }
}

/** The server's own sentence, in the reader's language. */
async function whyOf(response: Response): Promise<string> {
  try {
    return String((await response.json()).error.message);
  } catch {
    return `HTTP ${response.status}`;
  }
}

/** @param language the server's refusals are in it */
export function lineTo(language: string): Line {
  const headers = { "Accept-Language": language };
  return {
    send: (project, entries) =>
      asked(
        `/api/projects/${project}/journal`,
        {
          method: "POST",
          headers: { ...headers, "Content-Type": "application/json" },
          body: JSON.stringify({ entries }),
        },
        async (response) => (await response.json()).answers as EntryAnswer[],
      ),
    sendPhoto: (sha256, picture) =>
      asked(
        `/api/attachments/${sha256}`,
        { method: "PUT", headers: { ...headers, "Content-Type": picture.type }, body: picture },
        async () => true as const,
      ),
  };
}

/** As many entries are asked for at once. */
export const PAGE = 1000;

export function fetchJournal(
  project: string,
  after: number,
): Promise<Answer<{ readonly entries: readonly KnownEntry[]; readonly latest: number }>> {
  return asked(`/api/projects/${project}/journal?after=${after}&limit=${PAGE}`, {}, (response) =>
    response.json(),
  );
}

/** An `Opening`, as JSON. */
export function fetchOpening(project: string): Promise<Answer<string>> {
  return asked(`/api/projects/${project}/site/opening`, {}, (response) => response.text());
}
