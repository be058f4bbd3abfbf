import type { PanelInput } from '../../parts/InputsPanel.tsx'
import type { Side } from './useBreath.ts'

/** The inputs that move the curve most. */
export function leversOf({ craft, view }: Side): PanelInput[] {
  const engine = craft.engines[view.index]
  if (engine?.kind !== 'two-stroke') return []
  const at = `engines.${view.index}`
  const pipe = engine.exhaust?.pipe ?? []
  const baffle = pipe.findLastIndex((s) => s.to.value < 0.97 * s.from.value)
  const degree = Math.PI / 180
  const opens = engine.ports.exhaust.opens.value
  const transfers = engine.ports.transfers.opens.value
  return [
    ...(pipe.length > 0 ? [{ path: `${at}.exhaust.pipe.0.length` }] : []),
    ...(baffle > 0 ? [{ path: `${at}.exhaust.pipe.${baffle}.length` }] : []),
    ...(engine.exhaust?.stinger ? [{ path: `${at}.exhaust.stinger.bore` }] : []),
    { path: `${at}.ports.exhaust.opens`, low: opens - 8 * degree, high: opens + 8 * degree },
    { path: `${at}.ports.exhaust.width` },
    { path: `${at}.ports.transfers.opens`, low: transfers - 6 * degree, high: transfers + 6 * degree },
    { path: `${at}.carburettor.bore` },
    { path: `${at}.ignition.advance` },
  ]
}
