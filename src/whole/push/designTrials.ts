/**
 * Designs tried on the craft of one draw: the work a search deals out. A request and its results are plain data, so that they can be
 * worked out in any thread; which thread changes nothing.
 */
import type { Craft } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import type { JetSpec } from '../../trades/jet/jetTypes.ts'
import type { PumpFan } from '../../trades/jet/pumpFan.ts'
import type { PumpMap } from '../../trades/jet/pumpMap.ts'
import { type Leeway, MapStore, modelFromCraft } from './craftModel.ts'
import { type Design, designOfCraft, geometryFault, specOf } from './design.ts'
import { doubtsOf, drawsOf, leantBy } from './draws.ts'
import { meritOf, strengthUse, wantsOf } from './merit.ts'
import type { CraftModel } from './propulsionModel.ts'
import { type DragTable, dragTableOf, fitted, quickSums } from './quickSums.ts'

/** The craft as written, one of its joint draws by index, or its engines at an end of what they may give. */
export type Case = 'as written' | 'engines weak' | 'engines strong' | number

export interface TrialRequest {
  case: Case
  designs: readonly Design[]
}

/** One design on one case, SI. */
export interface Tried {
  merit: number
  pull: number
  topSpeed: number
  hump: number
  /** engine rotation tied up */
  rotation: number
}

/** Power of the first engine at its peak in one case, W. */
export interface TrialResult {
  tried: Tried[]
  power: number
}

const nothing: Tried = {
  merit: 0,
  pull: Number.NaN,
  topSpeed: Number.NaN,
  hump: Number.NaN,
  rotation: Number.NaN,
}

/** Maps read between sampled pitches, also for the pitch that is fitted. */
class FanStore extends MapStore {
  private readonly written: PumpFan | undefined

  /** `written` holds the maps of the craft as written, for a store of one of its draws. */
  constructor(written?: PumpFan) {
    super(400)
    this.written = written
  }

  override of(spec: JetSpec): PumpMap {
    return this.fan(spec, this.written).at(spec.rotor.pitchLeading)
  }
}

interface Ready {
  craft: Craft
  model: CraftModel
  drag: DragTable
  maps: FanStore
}

const engineDoubt = /^engines\.\d+\.(power|curve trust)$/

/** Where every doubt lies in a case, 0 to 1; NaN for at its value. */
function placesOf(craft: Craft, at: Case, solved?: SolvedCurves): Float64Array | undefined {
  if (at === 'as written') return undefined
  if (typeof at === 'number') return drawsOf(craft, solved).draw(at)
  const doubts = doubtsOf(craft, solved)
  // what the power itself may be is the doubt a builder knows; the trust of the curve stands in where no power is written
  const powers = doubts.filter((d) => /\.power$/.test(d.path) && engineDoubt.test(d.path))
  const end = at === 'engines weak' ? 0 : 1
  return Float64Array.from(doubts, (d) =>
    (powers.length > 0 ? powers.includes(d) : engineDoubt.test(d.path)) ? end : Number.NaN,
  )
}

/** Tries designs on one craft; keeps the craft as written between requests, each draw only while it is worked on. */
export class DesignTrials {
  private readonly craft: Craft
  private readonly solved: SolvedCurves | undefined
  private asWritten: Ready | undefined

  constructor(craft: Craft, solved?: SolvedCurves) {
    this.craft = craft
    this.solved = solved
  }

  /** Throws NotBalanced when an engine has no curve. */
  run(request: TrialRequest): TrialResult {
    let ready: Ready
    try {
      ready = this.ready(request.case)
    } catch (error) {
      // values drawn together may make no geometry: that draw says nothing
      if (error instanceof RangeError) return { tried: request.designs.map(() => nothing), power: Number.NaN }
      throw error
    }
    const engine = ready.model.units[0]!.shaft.engines[0]!
    return { tried: request.designs.map((d) => this.try(ready, d)), power: engine.curve.powerPeak.power }
  }

  private ready(at: Case): Ready {
    if (at === 'as written') {
      this.asWritten ??= this.prepare(this.craft, {}, new FanStore())
      return this.asWritten
    }
    const { craft, leeway } = leantBy(
      this.craft,
      doubtsOf(this.craft, this.solved),
      placesOf(this.craft, at, this.solved)!,
    )
    const written = this.ready('as written')
    return this.prepare(craft, leeway, new FanStore(written.maps.fan(written.model.units[0]!.spec)))
  }

  private prepare(craft: Craft, leeway: Leeway, maps: FanStore): Ready {
    const model = modelFromCraft(craft, maps, leeway, this.solved)
    return { craft, model, drag: dragTableOf(model), maps }
  }

  /** The maps of a design on the craft as written, which those of its draws are made from. */
  private nearTo(maps: FanStore, from: Design, to: Design): PumpFan | undefined {
    const written = this.ready('as written')
    return maps === written.maps
      ? undefined
      : written.maps.fan(specOf(written.model.units[0]!.spec, from, to))
  }

  private try({ craft, model, drag, maps }: Ready, to: Design): Tried {
    const from = designOfCraft(this.craft)
    const spec = specOf(model.units[0]!.spec, from, to)
    const bare = this.craft
    // what is fitted now is judged however it is made
    const same = to.blades === from.blades && to.bore === from.bore
    if (!same && geometryFault(spec)) return nothing
    const geared = to.ratio === from.ratio ? model : withRatio(model, to.ratio)
    try {
      const map = maps.fan(spec, this.nearTo(maps, from, to)).at(spec.rotor.pitchLeading)
      const sums = quickSums(fitted(geared, spec, map), drag)
      const merit = meritOf(wantsOf(bare), sums, strengthUse(craft.jet.rotor.material, spec, sums))
      const { pull, topSpeed, hump, rotation } = sums
      return { merit, pull, topSpeed, hump, rotation }
    } catch (error) {
      if (error instanceof RangeError) return nothing
      throw error
    }
  }
}

const withRatio = (model: CraftModel, ratio: number): CraftModel => ({
  ...model,
  units: model.units.map((u) => ({ ...u, shaft: { ...u.shaft, ratio } })),
})
