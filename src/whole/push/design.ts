/** What a search may choose on a craft: the impeller, the nozzle and, where they can still be chosen, the drive and the ring. */
import type { FileChange } from '../../base/answers/decision.ts'
import { formatQuantity } from '../../base/units/format.ts'
import { type Craft, fieldAt, type Quantity } from '../../craft/index.ts'
import { prepareBlades } from '../../trades/jet/blades.ts'
import type { JetSpec } from '../../trades/jet/jetTypes.ts'
import { hasReduction } from './changes.ts'
import { quantityAt } from './draws.ts'

/** SI; pitch at the leading edge. */
export interface Design {
  pitch: number
  blades: number
  nozzle: number
  ratio: number
  bore: number
}

export const designOfCraft = (craft: Craft): Design => ({
  pitch: craft.jet.rotor.pitch.value,
  blades: craft.jet.rotor.blades.value,
  nozzle: craft.jet.nozzle.bore.value,
  ratio: craft.drive.ratio.value,
  bore: craft.jet.rotor.bore.value,
})

/** What may be chosen besides pitch, blades and nozzle, which are printed. */
export interface Reach {
  ratio: boolean
  bore: boolean
}

/** A direct drive has no ratio to change, and a ring that is made no bore. */
export const reachOf = (craft: Craft): Reach => ({
  ratio: hasReduction(craft),
  bore: !craft.jet.rotor.ringMade,
})

/** The values of the craft file that make this design of it, SI by path: what is written beside a value goes with it. */
export function changesFor(craft: Craft, to: Design): Record<string, number> {
  const now = designOfCraft(craft)
  const { rotor } = craft.jet
  const values: Record<string, number> = {}
  const put = (path: string, was: number, is: number) => {
    if (Math.abs(is / was - 1) > 1e-9) values[path] = is
  }
  // a default follows by itself, a written value is scaled along
  const along = (q: Quantity, share: number) => {
    if (q.source !== 'assumed') put(q.path, q.value, q.value * share)
  }
  put('jet.rotor.pitch', now.pitch, to.pitch)
  along(rotor.trailingPitch, to.pitch / now.pitch)
  put('jet.rotor.blades', now.blades, to.blades)
  put('jet.nozzle.bore', now.nozzle, to.nozzle)
  put('drive.ratio', now.ratio, to.ratio)
  put('jet.rotor.bore', now.bore, to.bore)
  along(rotor.hub, to.bore / now.bore)
  along(rotor.hubOut, to.bore / now.bore)
  return values
}

/** The spec of a design, from the spec of the craft as it is. */
export function specOf(base: JetSpec, from: Design, to: Design): JetSpec {
  const { rotor, system } = base
  const pitch = to.pitch / from.pitch
  const bore = to.bore / from.bore
  // the duct's losses are counted on the rotor's annulus, which scales with the bore as a whole
  return {
    ...base,
    rotor: {
      ...rotor,
      blades: to.blades,
      pitchLeading: rotor.pitchLeading * pitch,
      pitchTrailing: rotor.pitchTrailing * pitch,
      tipDiameter: rotor.tipDiameter * bore,
      hubDiameter: rotor.hubDiameter * bore,
      ...(rotor.hubDiameterExit === undefined ? {} : { hubDiameterExit: rotor.hubDiameterExit * bore }),
    },
    system: { ...system, nozzleDiameter: system.nozzleDiameter * (to.nozzle / from.nozzle) },
  }
}

const to = (x: number, step: number) => Math.round(x / step) * step

/** Sizes as one would print or buy them: millimetres, and ratios in twentieths. */
export const rounded = (d: Design): Design => ({
  pitch: to(d.pitch, 1e-3),
  blades: d.blades,
  nozzle: to(d.nozzle, 1e-3),
  ratio: d.ratio === 1 ? 1 : to(d.ratio, 0.05),
  bore: to(d.bore, 1e-3),
})

/** least share of the way out beside the trailing edges, and of the circle the blades cover at the tip: judgement */
const leastOpen = 0.6
const leastSolidity = 0.5
/** turns of blade over one another: more is only friction, and no printer reaches between them */
const mostOverlap = 2.4

/** Why blades like these are not offered, or undefined. */
export function geometryFault(spec: JetSpec): string | undefined {
  const { rotor, system } = spec
  const nozzle = system.nozzleDiameter / rotor.tipDiameter
  if (!(nozzle > 0.35 && nozzle < 0.72)) return 'the nozzle would be out of proportion to the impeller'
  const b = prepareBlades(rotor, spec.model)
  if (Math.min(...b.open) < leastOpen) return 'the trailing edges would block the way out'
  if (b.solidity[b.count - 1]! < leastSolidity) return 'the blades would cover too little of the circle'
  if ((rotor.blades * rotor.wrap) / (2 * Math.PI) > mostOverlap)
    return 'the blades would lie over one another'
  return undefined
}

/** A value as one would type it into the craft file. */
export function typed(path: string, value: number): string {
  const field = fieldAt(path)
  return field?.type === 'quantity'
    ? formatQuantity(Number(value.toPrecision(6)), field.kind, field.unit, 5)
    : String(value)
}

/** Values to change, SI by path, as craft-file text. */
export const fileChanges = (craft: Craft, values: Readonly<Record<string, number>>): FileChange[] =>
  Object.entries(values).map(([path, value]) => ({
    path,
    from: typed(path, quantityAt(craft, path)?.value ?? Number.NaN),
    to: typed(path, value),
  }))
