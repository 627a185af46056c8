/** The site pages' own database in the browser. What is told is on the phone's disk before the page says so. */

const NAME = "outerleaf-site";

export type StoreName = "device" | "queue" | "journal" | "photos" | "held";

let opened: Promise<IDBDatabase> | undefined;

function database(): Promise<IDBDatabase> {
  opened ??= open().catch((error) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

function open(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      const { result } = request;
      result.createObjectStore("device");
      result.createObjectStore("queue", { keyPath: "place", autoIncrement: true });
      result.createObjectStore("journal");
      result.createObjectStore("photos");
      result.createObjectStore("held");
    };
    request.onsuccess = () => {
      const { result } = request;
      const shut = (): void => {
        opened = undefined;
      };
      result.onversionchange = () => {
        result.close();
        shut();
      };
      result.onclose = shut;
      resolve(result);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("blocked"));
  });
}

export function answerOf<Value>(request: IDBRequest<Value>): Promise<Value> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/**
 * All of it or nothing. Settles once it is on the disk; rejects where the browser keeps nothing.
 * @param work may wait for answers of this transaction alone, which ends when none is asked for
 */
export async function transact<Value>(
  stores: readonly StoreName[],
  mode: IDBTransactionMode,
  work: (transaction: IDBTransaction) => Promise<Value>,
): Promise<Value> {
  const held = await database();
  const transaction = held.transaction([...stores], mode, { durability: "strict" });
  const done = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("aborted"));
  });
  const [value] = await Promise.all([work(transaction), done]);
  return value;
}
