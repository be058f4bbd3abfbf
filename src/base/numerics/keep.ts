/** Keeping answers by the identity of what they were made from: craft never change once read, so their parts are keys. */

interface Kept<T> {
  parts: readonly unknown[]
  made: T
}

/**
 * `make`, asked once for the same parts: the last `most` answers are kept, the one used longest ago goes first. What `make` throws is
 * not kept.
 */
export function keptBy<A, T>(
  most: number,
  parts: (of: A) => readonly unknown[],
  make: (of: A) => T,
): (of: A) => T {
  const list: Kept<T>[] = []
  return (of) => {
    const now = parts(of)
    const at = list.findIndex((k) => k.parts.every((p, i) => Object.is(p, now[i])))
    const known = at < 0 ? { parts: now, made: make(of) } : list.splice(at, 1)[0]!
    list.unshift(known)
    list.length = Math.min(list.length, most)
    return known.made
  }
}
