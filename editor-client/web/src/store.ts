// Notes and pictures in the browser's storage of this address. Nothing here leaves the device.
export interface Note { name: string; text: string; changed: number; handle?: FileSystemFileHandle }
export interface Picture { name: string; bytes: Uint8Array }

const opened: Promise<IDBDatabase> = new Promise((resolve, reject) => {
  const request = indexedDB.open('hnote', 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore('notes', { keyPath: 'name' });
    request.result.createObjectStore('pictures', { keyPath: 'name' });
  };
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

type Store = 'notes' | 'pictures';

/** Runs one step to its end: a write that was promised is on the disk. */
async function run<T>(store: Store, mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const transaction = (await opened).transaction(store, mode, { durability: 'strict' });
  const request = work(transaction.objectStore(store));
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve(request.result);
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
  });
}

export const notes = (): Promise<Note[]> => run('notes', 'readonly', (store) => store.getAll() as IDBRequest<Note[]>);
export const note = (name: string): Promise<Note | undefined> => run('notes', 'readonly', (store) => store.get(name) as IDBRequest<Note | undefined>);
export const keepNote = (one: Note): Promise<unknown> => run('notes', 'readwrite', (store) => store.put(one));
export const dropNote = (name: string): Promise<unknown> => run('notes', 'readwrite', (store) => store.delete(name));
export const pictures = (): Promise<Picture[]> => run('pictures', 'readonly', (store) => store.getAll() as IDBRequest<Picture[]>);
export const keepPicture = (one: Picture): Promise<unknown> => run('pictures', 'readwrite', (store) => store.put(one));

/** A name that no note has yet. */
export async function freeName(wanted: string): Promise<string> {
  const taken = new Set((await notes()).map((one) => one.name));
  const base = wanted.replace(/\.hnote$/i, '').replace(/[^\p{L}\p{N} _-]+/gu, '-').trim() || 'note';
  for (let number = 1; ; number++) {
    const name = `${base}${number === 1 ? '' : `-${number}`}.hnote`;
    if (!taken.has(name)) {
      return name;
    }
  }
}
