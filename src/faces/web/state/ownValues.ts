import { quantitiesOf, readCraft } from '../../../craft/index.ts'
import { templateKinds, templateText } from '../../../craft/templates.ts'
import type { Craft } from './craftFile.ts'

/** values of a builder's own before a craft is judged */
const enough = 4

let first: ReadonlySet<string> | undefined

/** what new crafts of each kind begin with, path and text: nobody gave those values */
function firstValues(): ReadonlySet<string> {
  const crafts = templateKinds.flatMap((kind) => readCraft(templateText('x', kind)).craft ?? [])
  return new Set(crafts.flatMap((craft) => [...quantitiesOf(craft)].map((q) => `${q.path}=${q.text ?? ''}`)))
}

/** How many of a craft's numbers its builder gave, other than those a new craft begins with. */
export function ownValues(craft: Craft): number {
  first ??= firstValues()
  let count = 0
  for (const { text, path, source } of quantitiesOf(craft))
    if (text !== undefined && source !== 'assumed' && !first.has(`${path}=${text}`)) count++
  return count
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
