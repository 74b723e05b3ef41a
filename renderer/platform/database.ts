/** The parts of IndexedDB that are used here, as promises. A host that has none rejects. */

/** Opens a database of this window's origin, making its stores when it is new. */
export function openDatabase(
  name: string,
  stores: Readonly<Record<string, IDBObjectStoreParameters>>,
): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => {
      for (const [store, options] of Object.entries(stores)) request.result.createObjectStore(store, options);
    };
    request.onsuccess = () => {
      const database = request.result;
      // Another window that wants a newer version must not wait for this one.
      database.onversionchange = () => database.close();
      resolve(database);
    };
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error(`Another window holds ${name} back.`));
  });
}

export const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** Resolves once everything of a transaction is kept; rejects when none of it is. */
export const kept = (transaction: IDBTransaction): Promise<void> =>
  new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error("The transaction was given up."));
  });
