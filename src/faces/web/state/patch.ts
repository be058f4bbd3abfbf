/** One replaced stretch of text: at `at`, `removed` stood and `added` stands now. Enough to go both ways. */
export interface Patch {
  at: number
  removed: string
  added: string
}

/** The smallest single replacement that turns `from` into `to`: common head and tail are left out. */
export function patchBetween(from: string, to: string): Patch {
  const most = Math.min(from.length, to.length)
  let head = 0
  while (head < most && from.charCodeAt(head) === to.charCodeAt(head)) head++
  let tail = 0
  while (
    tail < most - head &&
    from.charCodeAt(from.length - 1 - tail) === to.charCodeAt(to.length - 1 - tail)
  )
    tail++
  return { at: head, removed: from.slice(head, from.length - tail), added: to.slice(head, to.length - tail) }
}

/** Text after the patch. Throws RangeError when the text is not the one the patch was made for. */
export function applyPatch(text: string, patch: Patch): string {
  if (!text.startsWith(patch.removed, patch.at))
    throw new RangeError(
      `patch at ${patch.at}: the text there is not the ${patch.removed.length} letters removed`,
    )
  return text.slice(0, patch.at) + patch.added + text.slice(patch.at + patch.removed.length)
}

/** The patch that takes `patch` back. */
export function invertPatch(patch: Patch): Patch {
  return { at: patch.at, removed: patch.added, added: patch.removed }
}

export function isEmptyPatch(patch: Patch): boolean {
  return patch.removed === '' && patch.added === ''
}
