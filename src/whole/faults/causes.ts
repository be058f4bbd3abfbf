/** Every cause that a craft can have. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Opened } from '../../trades/driveline/opensFirst.ts'
import type { Cause } from './causeTypes.ts'
import { craftCauses } from './craftCauses.ts'
import { engineCauses } from './engineCauses.ts'
import { firingCauses } from './firingCauses.ts'
import { linkCauses } from './linkCauses.ts'

export function causesOf(craft: Craft, opened: readonly Opened[] = []): Cause[] {
  const fires = craft.engines.some((e) => e.kind !== 'electric')
  const fixed = [...craftCauses, ...(fires ? [...engineCauses, ...firingCauses] : [])].filter(
    (c) => c.can?.(craft) ?? true,
  )
  return [...fixed, ...linkCauses(craft, opened)]
}
