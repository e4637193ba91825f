// The browser's own database. Each job has a record with the document as it is on
// the screen, and each of its revisions has one of its own.

const name = "firstdrop";
const version = 1;

export type Store = "jobs" | "revisions";

export async function openDatabase(factory: IDBFactory = indexedDB): Promise<IDBDatabase> {
  const asked = factory.open(name, version);
  asked.onupgradeneeded = () => {
    asked.result.createObjectStore("jobs", { keyPath: "id" });
    asked.result.createObjectStore("revisions", { keyPath: ["job", "id"] }).createIndex("job", "job");
  };
  const db = await result(asked);
  db.onversionchange = () => db.close(); // a newer screen in another tab must not wait for this one
  return db;
}

/** What a request comes to. */
export function result<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error ?? new Error("the browser's database failed"));
  });
}

/**
 * Does some work in one transaction, and returns when it is on the disk. All of it is
 * done or nothing. The work may wait for nothing but the transaction's own requests.
 */
export async function transact<T>(
  db: IDBDatabase,
  mode: IDBTransactionMode,
  work: (jobs: IDBObjectStore, revisions: IDBObjectStore) => Promise<T>,
): Promise<T> {
  const t = db.transaction(["jobs", "revisions"] satisfies Store[], mode, { durability: "strict" });
  const ended = new Promise<void>((done, failed) => {
    t.oncomplete = () => done();
    t.onabort = () => failed(t.error ?? new Error("the browser's database refused to save"));
  });
  ended.catch(() => undefined); // told below
  let value: T;
  try {
    value = await work(t.objectStore("jobs"), t.objectStore("revisions"));
  } catch (error) {
    if (t.error === null) abort(t);
    throw error;
  }
  await ended;
  return value;
}

function abort(t: IDBTransaction): void {
  try {
    t.abort();
  } catch {
    // it has ended already
  }
}
