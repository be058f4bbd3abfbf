import type { InventedOrder } from '../../../../trades/sound/invented.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import { MapStore } from '../../../../whole/push/craftModel.ts'
import { solveBalance } from '../../../../whole/push/solveBalance.ts'
import type { Craft } from '../../state/craftFile.ts'

/** rev/s taken for a craft that cannot be balanced yet */
const UNKNOWN = 100

/** An invented pull of this craft's running engines, tied up at the speed the model has for it. */
export function inventedOrder(craft: Craft, balance: Balance | undefined): InventedOrder {
  const engines = craft.engines.filter((e) => e.running && e.kind !== 'electric').slice(0, 2)
  const first = engines[0]
  const full = tiedUpRotation(craft, balance)
  return {
    rotations: engines.map(() => full),
    locked: engines.length > 1 && craft.drive.arrangement === 'one shaft',
    firingsPerTurn: first && 'cylinders' in first ? Math.max(1, Math.round(first.cylinders.value)) : 1,
    seed: 20,
  }
}

/** rev/s tied up; worked out quickly, without ranges, while the full answer is still on its way. */
function tiedUpRotation(craft: Craft, balance: Balance | undefined): number {
  if (balance) return balance.tiedUp.rotation
  try {
    const quick = { maps: new MapStore(), ranges: false, oneDead: false, pitches: false as const }
    return solveBalance(craft, quick).tiedUp.rotation
  } catch {
    return UNKNOWN
  }
}
