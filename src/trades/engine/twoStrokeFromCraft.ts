/**
 * A two-stroke of the craft file as plain inputs of the simulation. Choices made here where the file is silent: wall and
 * surface temperatures, heat transfer outside the pipe, petal preload; common practice, no source. Petal stiffness:
 * cantilever under uniform pressure, S. Timoshenko, Strength of Materials (1955).
 */
import type { Craft, Quantity } from '../../craft/index.ts'
import { type PipeEnd, pipeEnd } from '../../craft/sharing.ts'
import { siteOf } from '../../hull/site/site.ts'
import type { Segment } from '../../physics/gas/ductMesh.ts'
import { endCorrection } from '../../physics/gas/openPipe.ts'
import type { Outside } from '../../physics/gas/walls.ts'
import type { Spread } from './band.ts'
import {
  type Outlet,
  type PistonPortInlet,
  type ReedInlet,
  type SpecFault,
  type TwoStrokeSpec,
  timingAgainstHeight,
  uncoveredHeight,
  validateSpec,
} from './engineSpec.ts'
import { clearanceOfRatio, clearanceOfTrapped, pistonArea } from './geometry.ts'
import type { EngineClass } from './health.ts'
import { petalFrequency, petalMaterials } from './inletFlow.ts'
import { windowArea } from './portAreas.ts'
import { type SpeedSpan, usualRedline } from './speeds.ts'

export type TwoStrokeEngine = Extract<Craft['engines'][number], { kind: 'two-stroke' }>
type CraftExhaust = NonNullable<TwoStrokeEngine['exhaust']>

/** What the file gives for one engine; `spec` is absent when `missing` says what lacks. */
export interface TwoStrokeReading {
  spec?: TwoStrokeSpec
  missing?: string
  faults: SpecFault[]
  cylinders: number
  class: EngineClass
  spread: Spread
  /** rev/s; the redline by its piston speed where the file gives none */
  span: SpeedSpan
}

const fuelHeat = 43.5e6
const stoichiometric = 14.7

/** Reads engine `index` of the craft. Faults carry craft paths. */
export function twoStrokeFromCraft(craft: Craft, index: number): TwoStrokeReading {
  const engine = craft.engines[index]
  if (engine?.kind !== 'two-stroke')
    throw new RangeError(`engines.${index} is ${engine?.kind ?? 'absent'}, not a two-stroke`)
  const base = `engines.${index}`
  const shared = {
    cylinders: engine.cylinders.value,
    class: classOf[engine.tune],
    spread: spreadOf(engine),
    span: {
      idle: engine.idle.value,
      redline: engine.redline?.value ?? usualRedline(engine.stroke.value, engine.tune),
    },
  }
  if (!engine.exhaust) return { ...shared, missing: 'its exhaust: lengths and bores of the pipe', faults: [] }
  const spec = specOf(craft, engine, engine.exhaust, pipeEnd(craft, index)!)
  return {
    ...shared,
    spec,
    faults: [...heightFaults(engine, base), ...validateSpec(spec).map((f) => onCraft(f, base))],
  }
}

const classOf: Record<TwoStrokeEngine['tune'], EngineClass> = {
  utility: 'utility',
  sport: 'sport',
  race: 'motocross',
}

function specOf(craft: Craft, engine: TwoStrokeEngine, exhaust: CraftExhaust, end: PipeEnd): TwoStrokeSpec {
  const crank = { bore: engine.bore.value, stroke: engine.stroke.value, rod: engine.rod.value }
  const { exhaust: ex, transfers: tr } = engine.ports
  const exhaustPort = {
    opens: ex.opens.value,
    width: ex.width.value,
    height: ex.height?.value ?? uncoveredHeight(crank, ex.opens.value),
    corner: ex.cornerRadius.value,
    windows: ex.windows.value,
    discharge: ex.discharge.value,
  }
  const transferHeight = tr.height?.value ?? uncoveredHeight(crank, tr.opens.value)
  const carb = engine.carburettor.bore.value
  const { pressure, temperature } = siteOf(craft).air
  const air = { p: pressure, t: temperature, mixtureT: temperature + 2 }
  return {
    crank,
    exhaust: exhaustPort,
    transfers: {
      opens: tr.opens.value,
      width: tr.width.value,
      height: transferHeight,
      corner: 0.15 * Math.min(transferHeight, tr.width.value / tr.windows.value),
      windows: tr.windows.value,
      discharge: tr.discharge.value,
      narrowing: Math.cos(tr.entryAngle.value) * Math.cos(tr.roofAngle.value),
      ductLength: tr.ductLength.value,
      ductArea: tr.width.value * transferHeight,
      inertance: true,
      scavenging: tr.scavenging,
    },
    inlet: inletOf(engine),
    carburettor: { bore: carb, discharge: engine.carburettor.discharge.value },
    tract: { length: engine.inlet.tractLength.value, area: pistonArea(carb) },
    clearance: clearanceOf(engine),
    caseRatio: engine.crankcase.compressionRatio.value,
    ignition: engine.ignition.advance.value,
    burn: {
      delay: engine.combustion.burnDelay.value,
      duration: engine.combustion.burnDuration.value,
      a: 5,
      m: 1.3,
      completeness: 0.92,
    },
    mixture: {
      lambda: engine.mixture.lambda.value,
      airFuel: stoichiometric * engine.mixture.lambda.value,
      heat: fuelHeat,
    },
    friction: { c1: 0, c2: engine.friction.value },
    walls: { cylinder: engine.cooling === 'water' ? 455 : 500, annand: 0.338, case: 345, caseLoss: 2 },
    pipe: pipeOf(exhaust, end, exhaustPort, crank.stroke),
    outside: outsideOf(craft, exhaust),
    heatFactor: 0.07,
    outlet: outletOf(exhaust, end),
    air,
    gas: { gamma: 1.32, r: 295 },
  }
}

function clearanceOf(engine: TwoStrokeEngine): number {
  const crank = { bore: engine.bore.value, stroke: engine.stroke.value, rod: engine.rod.value }
  const c = engine.combustion
  if (c.volume) return c.volume.value
  if (c.compressionRatio) return clearanceOfRatio(crank, c.compressionRatio.value)
  return clearanceOfTrapped(crank, c.trappedCompressionRatio.value, engine.ports.exhaust.opens.value)
}

/** preload that petals are usually set with, Pa */
const petalPreload = 300

function inletOf(engine: TwoStrokeEngine): ReedInlet | PistonPortInlet {
  const inlet = engine.inlet
  if (inlet.kind === 'piston port')
    return {
      kind: 'piston port',
      opens: inlet.opens.value,
      width: inlet.width.value,
      height: inlet.height.value,
      corner: 0.15 * Math.min(inlet.width.value, inlet.height.value),
      windows: 1,
      discharge: inlet.discharge.value,
    }
  const window = inlet.windowArea?.value ?? 1.3 * pistonArea(engine.carburettor.bore.value)
  const [n, l, t, stop] = [
    inlet.petals.value,
    inlet.petalLength.value,
    inlet.petalThickness.value,
    inlet.stopHeight.value,
  ]
  // a lifted petal lets gas past its tip and both sides: h (w + l); windows taken as 0.8 of the petal's length
  const width = window / (n * 0.8 * l)
  const lifted = n * stop * (width + l)
  const modulus = petalMaterials[inlet.petalMaterial].modulus
  return {
    kind: 'reed',
    area: inlet.discharge.value * Math.min(window, lifted),
    crack: petalPreload,
    full: (stop * modulus * t ** 3) / (1.5 * l ** 4),
    frequency: petalFrequency(inlet.petalMaterial, l, t),
  }
}

/** From the piston face: the duct in the cylinder, the pipe's segments, the stinger, and a free outlet tube. */
function pipeOf(
  exhaust: CraftExhaust,
  end: PipeEnd,
  port: TwoStrokeSpec['exhaust'],
  stroke: number,
): Segment[] {
  const open = windowArea(port, Math.min(port.height, stroke))
  const portBore = Math.sqrt((4 * open) / Math.PI)
  const segments: Segment[] = [
    { length: exhaust.duct.length.value, d0: portBore, d1: exhaust.duct.bore?.value ?? 1.06 * portBore },
  ]
  for (const s of exhaust.pipe)
    segments.push({ length: s.length.value, d0: s.from.value, d1: s.to.value, bend: s.bend.value })
  if (exhaust.stinger)
    segments.push({
      length: exhaust.stinger.length.value,
      d0: exhaust.stinger.bore.value,
      d1: exhaust.stinger.bore.value,
    })
  if (end.muffler) return segments
  if (end.outlet && end.outlet.length.value > 0)
    segments.push({
      length: end.outlet.length.value,
      d0: end.outlet.bore.value,
      d1: end.outlet.bore.value,
    })
  const last = segments[segments.length - 1]!
  segments.push({ length: Math.max(1e-4, endCorrection(last.d1 / 2)), d0: last.d1, d1: last.d1 })
  return segments
}

/**
 * Box volume, and its outlet tube as one nozzle: entry, friction of the tube, exit. Where several pipes lead into one box, each has its
 * share of box and outlet: exact for pipes alike that fire together, and the mean pressure holds for any other phase.
 */
function outletOf(exhaust: CraftExhaust, { muffler: box, outlet, running }: PipeEnd): Outlet {
  if (!box) return { kind: 'open' }
  const [l, w] = [box.length.value, box.width.value]
  const h = box.height?.value
  const volume = h ? l * w * h : l * pistonArea(w)
  const surface = h ? 2 * (l * w + l * h + w * h) : Math.PI * w * (l + 0.5 * w)
  const stinger = exhaust.stinger?.bore.value ?? exhaust.pipe[exhaust.pipe.length - 1]!.to.value
  const bore = outlet?.bore.value ?? 1.1 * stinger
  const tube = outlet?.length.value ?? 0
  // discharge 0.8 for a plain hole; a tube adds 4 f L / D with f = 0.005
  const loss = 1 / (0.8 * 0.8) + (4 * 0.005 * tube) / bore
  return {
    kind: 'box',
    volume: volume / running,
    bore: bore / Math.sqrt(running),
    discharge: 1 / Math.sqrt(loss),
    loss: (15 * surface) / running,
  }
}

function outsideOf(craft: Craft, exhaust: CraftExhaust): Outside {
  const { water, air } = siteOf(craft)
  const t = air.temperature
  switch (exhaust.finish) {
    case 'bare':
      return { h: 30, emissivity: 0.8, t }
    case 'wrapped':
      return { h: 8, emissivity: 0.15, t }
    case 'water-cooled':
      return { h: 600, emissivity: 0, t: water.temperature }
  }
}

const half = (q: Quantity): number => 0.5 * (q.high - q.low)

function spreadOf(engine: TwoStrokeEngine): Spread {
  const { exhaust, transfers } = engine.ports
  const ratio = engine.combustion.trappedCompressionRatio
  const given = engine.combustion.volume ?? engine.combustion.compressionRatio
  return {
    exhaustOpens: half(exhaust.opens),
    transferOpens: half(transfers.opens),
    exhaustWidth: half(exhaust.width) / exhaust.width.value,
    // a volume or a ratio that was given is as uncertain as it says; a default as its range says
    trappedRatio: given ? (half(given) / given.value) * ratio.value : half(ratio),
    exhaustDischarge: half(exhaust.discharge),
    scavenging: true,
  }
}

/** Timings on the wheel against heights by caliper, where both were given. */
function heightFaults(engine: TwoStrokeEngine, base: string): SpecFault[] {
  const crank = { bore: engine.bore.value, stroke: engine.stroke.value, rod: engine.rod.value }
  const faults: SpecFault[] = []
  for (const name of ['exhaust', 'transfers'] as const) {
    const port = engine.ports[name]
    if (!port.height || port.opens.source === 'assumed') continue
    const fault = timingAgainstHeight(
      crank,
      port.opens.path,
      port.opens.value,
      crank.stroke - port.height.value,
    )
    if (fault) faults.push(fault)
  }
  return faults.map((f) => (f.path.startsWith('engines') ? f : { ...f, path: `${base}.${f.path}` }))
}

/** spec paths to craft paths, longest first */
const craftPaths: readonly (readonly [string, string])[] = [
  ['crank.', ''],
  ['exhaust.', 'ports.exhaust.'],
  ['transfers.', 'ports.transfers.'],
  ['inlet.area', 'inlet.window area'],
  ['inlet.full', 'inlet.petal thickness'],
  ['inlet.', 'inlet.'],
  ['clearance', 'combustion.volume'],
  ['caseRatio', 'crankcase.compression ratio'],
  ['tract.', 'inlet.tract length'],
  ['pipe', 'exhaust.pipe'],
  ['outlet.volume', 'exhaust.muffler'],
  ['outlet.bore', 'exhaust.outlet.bore'],
]

function onCraft(f: SpecFault, base: string): SpecFault {
  const hit = craftPaths.find(([from]) => f.path.startsWith(from))
  return { ...f, path: `${base}.${hit ? hit[1] + f.path.slice(hit[0].length) : f.path}` }
}
