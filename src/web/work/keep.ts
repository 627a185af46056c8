/** What was edited and not yet saved, kept in the browser, so that a closed page or a crash loses nothing. */

export interface Kept {
  /** The file's text that the edits began from. */
  readonly base: string;
  readonly document: unknown;
}

const STORE = "edited";

/** Undefined where the browser keeps nothing: a private window, a full disk. */
function open(): Promise<IDBDatabase | undefined> {
  return new Promise((resolve) => {
    try {
      const request = indexedDB.open("outerleaf", 1);
      request.onupgradeneeded = () => request.result.createObjectStore(STORE);
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => resolve(undefined);
      request.onblocked = () => resolve(undefined);
    } catch {
      resolve(undefined);
    }
  });
}

async function ask<Answer>(
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<Answer>,
): Promise<Answer | undefined> {
  const database = await open();
  if (!database) return undefined;
  return new Promise((resolve) => {
    const transaction = database.transaction(STORE, mode);
    const request = work(transaction.objectStore(STORE));
    transaction.oncomplete = () => {
      database.close();
      resolve(request.result);
    };
    transaction.onabort = () => {
      database.close();
      resolve(undefined);
    };
  });
}

export async function keptOf(name: string): Promise<Kept | undefined> {
  return ask<Kept | undefined>("readonly", (store) => store.get(name));
}

export async function keep(name: string, kept: Kept): Promise<void> {
  await ask("readwrite", (store) => store.put(kept, name));
}

export async function forget(name: string): Promise<void> {
  await ask("readwrite", (store) => store.delete(name));
}
