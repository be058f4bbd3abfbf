import type { Quantity } from '../../../../craft/index.ts'

/** "12 numbers, 3 assumed", for the line of a fold. */
export function countIn(node: unknown): string {
  let all = 0
  let assumed = 0
  const walk = (at: unknown): void => {
    if (at === null || typeof at !== 'object') return
    if ('path' in at && 'value' in at) {
      all++
      if ((at as Quantity).source === 'assumed') assumed++
      return
    }
    for (const next of Array.isArray(at) ? at : Object.values(at)) walk(next)
  }
  walk(node)
  if (all === 0) return 'none given'
  const items = Array.isArray(node) ? `${node.length} ${node.length === 1 ? 'item' : 'items'}, ` : ''
  return `${items}${all} ${all === 1 ? 'number' : 'numbers'}${assumed > 0 ? `, ${assumed} assumed` : ''}`
}
