/** A hull file kept in this browser beside the craft files, so that a reload finds it again. */
export interface KeptMesh {
  name: string
  bytes: Uint8Array
}

/** The browser's store of hull files; the craft file itself only names them. */
function shelf(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open('wakewright-hulls', 1)
    asked.onupgradeneeded = () => asked.result.createObjectStore('meshes')
    asked.onsuccess = () => resolve(asked.result)
    asked.onerror = () => reject(asked.error)
  })
}

async function during<T>(
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const db = await shelf()
  try {
    return await new Promise<T>((resolve, reject) => {
      const asked = ask(db.transaction('meshes', mode).objectStore('meshes'))
      asked.onsuccess = () => resolve(asked.result)
      asked.onerror = () => reject(asked.error)
    })
  } finally {
    db.close()
  }
}

const arrivals = new Set<(mesh: KeptMesh) => void>()

/** Told of every hull file kept from now on. */
export function onKept(tell: (mesh: KeptMesh) => void): void {
  arrivals.add(tell)
}

/** Keeps a hull file; a browser that keeps nothing loses it on reload, which the page then says. */
export async function keepMesh(mesh: KeptMesh): Promise<void> {
  for (const tell of arrivals) tell(mesh)
  await during('readwrite', (store) => store.put(mesh, mesh.name)).catch(() => undefined)
}

/** The file kept under a name; files kept by an earlier version had the unit behind the name. */
export async function keptMesh(name: string): Promise<KeptMesh | undefined> {
  const own = await during<KeptMesh | undefined>('readonly', (store) => store.get(name)).catch(
    () => undefined,
  )
  if (own) return own
  for (const unit of ['guess', 'mm', 'cm', 'm', 'in']) {
    const old = await during<KeptMesh | undefined>('readonly', (store) => store.get(`${name} ${unit}`)).catch(
      () => undefined,
    )
    if (old) return old
  }
  return undefined
}
