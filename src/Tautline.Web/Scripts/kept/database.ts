// The database of this page in the browser. A write is acknowledged when its transaction is complete, not before: only then may a page say 'kept'.

let opening: Promise<IDBDatabase> | undefined;

function open(): Promise<IDBDatabase> {
  opening ??= new Promise((done, failed) => {
    const request = indexedDB.open("tautline", 3);
    request.onupgradeneeded = (event) => {
      if (event.oldVersion < 1) {
        request.result.createObjectStore("jobs", { keyPath: "id" });
        request.result.createObjectStore("texts", { keyPath: "id" });
        request.result.createObjectStore("versions", { keyPath: "key", autoIncrement: true }).createIndex("job", "job");
      }
      if (event.oldVersion < 2) {
        request.result.createObjectStore("entries", { keyPath: ["job", "device", "sequence"] }).createIndex("job", "job");
        request.result.createObjectStore("device", { keyPath: "one" });
        request.result.createObjectStore("shared", { keyPath: "id" });
      }
      request.result.createObjectStore("photos", { keyPath: ["job", "sha256"] }).createIndex("job", "job");
    };
    request.onsuccess = () => {
      // Another tab with a newer program may want to change the shelf: let it, and open again when asked.
      request.result.onversionchange = () => { request.result.close(); opening = undefined; };
      done(request.result);
    };
    request.onerror = () => { opening = undefined; failed(told(request.error)); };
  });
  return opening;
}

// The page tells these apart by their first word.
export function told(fault: DOMException | null): Error {
  if (fault?.name === "QuotaExceededError") return new Error("full: There is no room left for this page in the browser.");
  return new Error(`shelf: ${fault?.message || "The browser does not let this page keep anything."}`);
}

export async function change(stores: string[], work: (transaction: IDBTransaction) => void): Promise<void> {
  const shelf = await open();
  return new Promise((done, failed) => {
    const transaction = shelf.transaction(stores, "readwrite", { durability: "strict" });
    transaction.oncomplete = () => done();
    transaction.onabort = () => failed(told(transaction.error));
    try {
      work(transaction);
    } catch (fault) {
      failed(told(fault as DOMException));
      transaction.abort();
    }
  });
}

export async function ask<T>(store: string, question: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const shelf = await open();
  return new Promise((done, failed) => {
    const request = question(shelf.transaction(store).objectStore(store));
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(told(request.error));
  });
}
