/**
 * The craft file to the drive line's chain. Inertias nobody gave: an engine's crank and flywheel by its displacement, a printed impeller by its
 * bore with the water that turns along: judgement, no source.
 */
import type { Range } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Cylinder } from './crankTorque.ts'
import {
  about,
  type Belt,
  type Between,
  type CraftLink,
  type DriveChain,
  type EngineMass,
  holdOf,
  type ImpellerMass,
  jointOf,
  turningOf,
} from './driveLinks.ts'

type CraftEngine = Craft['engines'][number]

/** kg·m² of crank and flywheel a cubic metre swept */
const inertiaPerVolume = { value: 10, low: 6, high: 17 }

const degree = Math.PI / 180

function cylinderOf(e: CraftEngine): Cylinder | undefined {
  if (e.kind === 'electric') return undefined
  if (e.kind !== 'two-stroke') {
    // bore and stroke of small two-strokes differ by a tenth at most
    const side = ((4 * e.displacement.value) / e.cylinders.value / Math.PI) ** (1 / 3)
    return { bore: side, stroke: side, rod: 1.95 * side, exhaustOpens: 98 * degree, ratio: 6.8 }
  }
  return {
    bore: e.bore.value,
    stroke: e.stroke.value,
    rod: e.rod.value,
    exhaustOpens: e.ports.exhaust.opens.value,
    ratio: e.combustion.trappedCompressionRatio.value,
  }
}

function massOf(e: CraftEngine, engine: number, path: string): EngineMass {
  const cylinder = cylinderOf(e)
  const cylinders = e.kind === 'electric' ? 1 : e.cylinders.value
  const displacement = cylinder ? cylinders * (Math.PI / 4) * cylinder.bore ** 2 * cylinder.stroke : 0
  const { value, low, high } = inertiaPerVolume
  // a motor's rotor by the torque it gives is not known either: that of a 60 cc engine
  const swept = displacement > 0 ? displacement : 60e-6
  return {
    kind: 'engine',
    path,
    name: e.name ?? `engine ${engine + 1}`,
    engine,
    running: e.running,
    cylinders,
    displacement,
    cylinder,
    inertia: e.rotatingInertia ?? { value: value * swept, low: low * swept, high: high * swept },
    idle: 'idle' in e ? e.idle.value : 0,
  }
}

const densities: Readonly<Record<string, number>> = {
  aluminium: 2700,
  bronze: 8700,
  'stainless steel': 7900,
}

function impellerOf(
  craft: Craft,
  link: Extract<CraftLink, { kind: 'impeller' }>,
  path: string,
): ImpellerMass {
  const { rotor, nozzle } = craft.jet
  const bore = rotor.bore.value
  const disc = (Math.PI / 4) * bore ** 2 * 0.5 * bore
  const mass: Range = link.mass ?? about(0.35 * disc * (densities[rotor.material] ?? 1200), 0.65, 1.5)
  const dry = (0.29 * bore) ** 2
  const water = 0.3 * disc * 1000 * (0.33 * bore) ** 2
  return {
    kind: 'impeller',
    path,
    mass,
    inertia: {
      value: dry * mass.value + water,
      low: 0.8 * dry * mass.low + 0.5 * water,
      high: 1.25 * dry * mass.high + 1.6 * water,
    },
    bore,
    hub: rotor.hub.value,
    nozzle: nozzle.bore.value,
    wet: { value: 1.4, low: 1.2, high: 1.7 },
  }
}

/** Index under engines of each engine link: by its name, the others in the order of the file. */
function enginesOfLinks(craft: Craft): number[] {
  const taken = new Set(
    craft.shaft.flatMap((l) => (l.kind === 'engine' && l.name ? [indexOfName(craft, l.name)] : [])),
  )
  let next = 0
  return craft.shaft.flatMap((l) => {
    if (l.kind !== 'engine') return []
    if (l.name) return [indexOfName(craft, l.name)]
    while (taken.has(next)) next++
    return [next++]
  })
}

const indexOfName = (craft: Craft, name: string): number => craft.engines.findIndex((e) => e.name === name)

/** K that a part bolted to a crankcase is over the air round it: judgement */
const besideCase = { value: 15, low: 5, high: 25 }

/** A part whose temperature nobody gave is as warm as the bay makes it. */
function warmedBy<P extends Between & { warm: Range }>(
  part: P,
  given: { source: string },
  bay: Range | undefined,
): P {
  if (!bay || given.source !== 'assumed') return part
  const { value, low, high } = besideCase
  return { ...part, warm: { value: bay.value + value, low: bay.low + low, high: bay.high + high } }
}

/** What holds the front of a shaft, the shaft itself; an impeller's own hold. */
function piecesOf(
  link: CraftLink,
  path: string,
  behind: string,
  before: string,
  thick: Range,
  bay?: Range,
): Between[] {
  switch (link.kind) {
    case 'coupling':
      return [
        warmedBy(jointOf(link, path, `the coupling between ${before} and ${behind}`), link.temperature, bay),
      ]
    case 'belt':
      return [{ kind: 'belt', path, name: 'the belt', implied: false, pulley: link.pulley }]
    case 'shaft':
      return [
        warmedBy(
          holdOf(link.hold, `${path}.hold`, 'the hub at the front of the shaft', thick),
          link.hold.temperature,
          bay,
        ),
        turningOf(link, path),
      ]
    case 'impeller':
      return [holdOf(link.hold, `${path}.hold`, 'the impeller’s hub on the shaft', thick)]
    case 'engine':
      return []
  }
}

/** The chain of the craft, its joints as warm as the air of the bay where that is known; undefined where the file has none. The reader has seen to it that it begins with an engine and ends with the impeller. */
export function driveFromCraft(craft: Craft, bay?: Range): DriveChain | undefined {
  const last = craft.shaft.at(-1)
  if (last?.kind !== 'impeller') return undefined
  const indices = enginesOfLinks(craft)
  const engines: EngineMass[] = []
  const between: Between[][] = []
  const thick = craft.shaft.find((l) => l.kind === 'shaft')?.diameter ?? craft.jet.duct.shaft
  craft.shaft.forEach((link, i) => {
    const path = `shaft.${i}`
    if (link.kind === 'engine') {
      const engine = indices[engines.length] ?? -1
      const own = craft.engines[engine]
      if (!own) return
      engines.push(massOf(own, engine, path))
      between.push([])
      return
    }
    const nextEngine = craft.shaft.slice(i).find((l) => l.kind === 'engine')
    const ahead = nextEngine ? craft.engines[indices[engines.length] ?? -1]?.name : undefined
    const behind = nextEngine ? (ahead ?? `engine ${engines.length + 1}`) : 'the impeller shaft'
    between.at(-1)?.push(...piecesOf(link, path, behind, engines.at(-1)?.name ?? '', thick, bay))
  })
  if (engines.length === 0) return undefined
  const chain = { engines, between, impeller: impellerOf(craft, last, `shaft.${craft.shaft.length - 1}`) }
  return craft.drive.ratio.value === 1 ? chain : { ...chain, between: withBelt(between) }
}

/** A ratio lies somewhere: without a belt in the chain it is taken right behind the last coupling. */
function withBelt(between: readonly (readonly Between[])[]): (readonly Between[])[] {
  if (between.flat().some((b) => b.kind === 'belt')) return [...between]
  const last = between.at(-1) ?? []
  const at = last.findLastIndex((b) => b.kind === 'coupling') + 1
  const belt: Belt = {
    kind: 'belt',
    path: 'drive.ratio',
    name: 'the belt',
    implied: true,
    pulley: about(0.075, 0.73, 1.33),
  }
  return [...between.slice(0, -1), [...last.slice(0, at), belt, ...last.slice(at)]]
}
