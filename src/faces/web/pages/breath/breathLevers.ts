import { stepFromSi } from '../../../../base/units/convert.ts'
import { fieldAt } from '../../../../craft/index.ts'
import { type Effect, leverPaths } from '../../../../whole/breath/breathEffects.ts'
import { type Look, saysStep } from '../../../../whole/push/shown.ts'
import type { PanelInput } from '../../parts/InputsPanel.tsx'
import { shownUnit } from '../../state/craftFile.ts'
import { tidyNumber } from '../../state/shownValues.ts'
import type { UnitSystem } from '../../state/store.ts'
import type { Side } from './useBreath.ts'

/** inputs shown at most */
const most = 8
const degree = Math.PI / 180
/** a port's edge is moved by a few degrees, not by halves */
const angleReach = 8 * degree

/** The inputs that move the curve most: the strongest first once that is worked out, till then in the gas's own order. */
export function leversOf({ craft, view, simulation }: Side, look: Look, units: UnitSystem): PanelInput[] {
  const effects = simulation?.effects
  const paths = effects?.map((e) => e.path) ?? leverPaths(craft, view.index)
  return paths.slice(0, most).map((path) => {
    const effect = effects?.find((e) => e.path === path)
    return { path, ...reach(craft, path), ...(effect ? { effect: words(effect, look, units) } : {}) }
  })
}

/** ends of an angle's slider; lengths keep the usual ones */
function reach(craft: Side['craft'], path: string): { low?: number; high?: number } {
  const port = /^engines\.(\d+)\.ports\.(exhaust|transfers)\.opens$/.exec(path)
  const engine = port && craft.engines[Number(port[1])]
  if (!port || engine?.kind !== 'two-stroke') return {}
  const now = engine.ports[port[2] as 'exhaust' | 'transfers'].opens.value
  return { low: now - angleReach, high: now + angleReach }
}

/** "+1 deg: −0.2 kW, +120 rpm" */
function words({ path, step, power, rpm }: Effect, look: Look, units: UnitSystem): string {
  const field = fieldAt(path)
  const kind = field?.type === 'quantity' ? field.kind : 'length'
  const unit = shownUnit(kind, units, field?.type === 'quantity' ? field.unit : '')
  const turns = Math.round(rpm / 10) * 10
  const sign = turns > 0 ? '+' : turns < 0 ? '−' : ''
  return `+${tidyNumber(stepFromSi(step, kind, unit), 2)} ${unit}: ${saysStep(power, 'power', look)}, ${sign}${Math.abs(turns)} rpm`
}
