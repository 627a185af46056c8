/** What was edited and not yet kept by the server, variants, and pictures, in the browser's own database: a closed page or a crash loses nothing. */
import type { Message } from "../../text/message.ts";

export interface Unsent {
  /** Hash of the file's document that the edits began from. */
  readonly base: string;
  readonly document: unknown;
  /** The last edit. */
  readonly says: Message;
  /** Tag of the server's revision that the edits were made from; none where there was none. */
  readonly onto?: string;
}

export interface HeldUnsent extends Unsent {
  readonly key: string;
}

const STORES = ["unsent", "variants", "pictures"] as const;

type StoreName = (typeof STORES)[number];

/** The browser's database, open from its first use on: opening it takes longer than what is asked of it. */
let opened: Promise<IDBDatabase | undefined> | undefined;

function database(): Promise<IDBDatabase | undefined> {
  opened ??= open();
  return opened;
}

/** Undefined where the browser keeps nothing: a private window, a full disk. */
function open(): Promise<IDBDatabase | undefined> {
  const shut = (): void => {
    opened = undefined;
  };
  return new Promise((resolve) => {
    try {
      const request = indexedDB.open("outerleaf", 4);
      request.onupgradeneeded = () => {
        const database = request.result;
        const there = [...database.objectStoreNames];
        const ours: readonly string[] = STORES;
        for (const name of there) if (!ours.includes(name)) database.deleteObjectStore(name);
        for (const name of ours) if (!there.includes(name)) database.createObjectStore(name);
      };
      request.onsuccess = () => {
        const { result } = request;
        // Another window's newer program, or a reader who clears the browser, waits for it to be closed.
        result.onversionchange = () => {
          result.close();
          shut();
        };
        result.onclose = shut;
        resolve(result);
      };
      const none = (): void => {
        shut();
        resolve(undefined);
      };
      request.onerror = none;
      request.onblocked = none;
    } catch {
      shut();
      resolve(undefined);
    }
  });
}

let last: Promise<unknown> = Promise.resolve();

/** One at a time, in the order asked: what was forgotten must not take away what was kept after it. */
function ask<Answer>(
  name: StoreName,
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<Answer>,
): Promise<{ readonly answer: Answer } | undefined> {
  const asked = last.then(() => askNow(name, mode, work));
  last = asked;
  return asked;
}

/** The answer, or undefined where nothing could be asked. */
async function askNow<Answer>(
  name: StoreName,
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<Answer>,
): Promise<{ readonly answer: Answer } | undefined> {
  const held = await database();
  if (!held) return undefined;
  return new Promise((resolve) => {
    const transaction = held.transaction(name, mode);
    const request = work(transaction.objectStore(name));
    transaction.oncomplete = () => resolve({ answer: request.result });
    transaction.onabort = () => resolve(undefined);
  });
}

/** Each window keeps what it edits under a key of its own, so that none writes over another's. */
export function keyFor(id: string): string {
  return `${id} ${crypto.getRandomValues(new Uint32Array(3)).join("-")}`;
}

export async function unsentOf(id: string): Promise<readonly HeldUnsent[]> {
  const range = IDBKeyRange.bound(`${id} `, `${id} \uffff`);
  const keys = await ask("unsent", "readonly", (store) => store.getAllKeys(range));
  const held: HeldUnsent[] = [];
  for (const key of keys?.answer ?? []) {
    const found = await ask<Unsent | undefined>("unsent", "readonly", (store) => store.get(key));
    if (found?.answer) held.push({ ...found.answer, key: String(key) });
  }
  return held;
}

/** False where the browser would not take it. */
export async function keep(key: string, unsent: Unsent): Promise<boolean> {
  return (await ask("unsent", "readwrite", (store) => store.put(unsent, key))) !== undefined;
}

export async function forget(key: string): Promise<void> {
  await ask("unsent", "readwrite", (store) => store.delete(key));
}

/** A variant of a project that its reader set aside. */
export interface SetAside {
  readonly name: string;
  readonly document: unknown;
  /** What was last done to come there. */
  readonly says: Message;
}

export async function setAsideOf(project: string): Promise<readonly SetAside[]> {
  const found = await ask<readonly SetAside[] | undefined>("variants", "readonly", (store) =>
    store.get(project),
  );
  return found?.answer ?? [];
}

export async function setAside(project: string, variants: readonly SetAside[]): Promise<void> {
  await ask("variants", "readwrite", (store) => store.put(variants, project));
}

/** Told when a variant was set aside from elsewhere than the list of variants. */
export const ASIDE = new EventTarget();

/** Sets one more aside, under a name of its own. */
export async function addAside(
  project: string,
  { document, says }: Pick<SetAside, "document" | "says">,
): Promise<void> {
  const held = await setAsideOf(project);
  await setAside(project, [...held, { name: freeName(held), document, says }]);
  ASIDE.dispatchEvent(new Event("added"));
}

/** A, B … Z, then with figures. */
export function freeName(held: readonly Pick<SetAside, "name">[]): string {
  const taken = new Set(held.map(({ name }) => name));
  for (let i = 0; ; i++) {
    const name = `${String.fromCharCode(65 + (i % 26))}${i < 26 ? "" : Math.floor(i / 26) + 1}`;
    if (!taken.has(name)) return name;
  }
}

/** A picture and whether the server has it. */
export interface HeldPicture {
  readonly blob: Blob;
  readonly sent: boolean;
}

export async function heldPicture(name: string): Promise<HeldPicture | undefined> {
  const found = await ask<HeldPicture | undefined>("pictures", "readonly", (store) => store.get(name));
  return found?.answer;
}

/** False where the browser would not take it. */
export async function holdPicture(name: string, picture: HeldPicture): Promise<boolean> {
  return (await ask("pictures", "readwrite", (store) => store.put(picture, name))) !== undefined;
}

/** Names of those that the server has not. */
export async function unsentPictures(): Promise<readonly string[]> {
  const names = await ask("pictures", "readonly", (store) => store.getAllKeys());
  const unsent: string[] = [];
  for (const key of names?.answer ?? []) {
    const name = String(key);
    if ((await heldPicture(name))?.sent === false) unsent.push(name);
  }
  return unsent;
}
