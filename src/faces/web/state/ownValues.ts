import { quantitiesOf, readCraft } from '../../../craft/index.ts'
import { templateKinds, templateText } from '../../../craft/templates.ts'
import type { Craft } from './craftFile.ts'

/** values of a builder's own before a craft is judged */
const enough = 4

let first: readonly ReadonlyMap<string, string>[] | undefined

/** what new crafts of each kind begin with, by path: nobody gave those values */
function firstValues(): readonly ReadonlyMap<string, string>[] {
  const crafts = templateKinds.flatMap((kind) => readCraft(templateText('x', kind)).craft ?? [])
  return crafts.map((craft) => new Map([...quantitiesOf(craft)].map((q) => [q.path, q.text ?? ''])))
}

/** How many of a craft's numbers its builder gave, other than those a new craft of its kind begins with: of the kind it is nearest to. */
export function ownValues(craft: Craft): number {
  first ??= firstValues()
  const given = [...quantitiesOf(craft)].filter((q) => q.text !== undefined && q.source !== 'assumed')
  return Math.min(...first.map((values) => given.filter((q) => values.get(q.path) !== q.text).length))
}

const known = new WeakMap<Craft, boolean>()

/** True when enough of a craft is its builder's for it to be judged. */
export function isOwn(craft: Craft): boolean {
  const before = known.get(craft)
  if (before !== undefined) return before
  const own = ownValues(craft) >= enough
  known.set(craft, own)
  return own
}
