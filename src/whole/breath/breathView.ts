/** What the craft file holds of one engine's breathing, as the figures take it. */

import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import { type PipeEnd, pipeEnd } from '../../craft/sharing.ts'
import { siteOf } from '../../hull/site/site.ts'
import { twoStrokeFindings } from '../../trades/engine/engineFindings.ts'
import { enginesFromCraft } from '../../trades/engine/enginesFromCraft.ts'
import { givenLine, type TorqueLine } from '../../trades/engine/torqueLine.ts'
import { type TwoStrokeReading, twoStrokeFromCraft } from '../../trades/engine/twoStrokeFromCraft.ts'
import type { MufflerBox } from '../../trades/exhaust/muffler.ts'
import type { DrawnPipe } from './pipeFigure.ts'

export interface BreathView {
  index: number
  name: string
  kind: Craft['engines'][number]['kind']
  /** ports and pipe; absent for engines known by a curve only */
  reading?: TwoStrokeReading
  pipe?: DrawnPipe
  box?: MufflerBox
  /** curve that the file itself gives */
  given?: TorqueLine
  /** Pa outside */
  air: number
  /** why it cannot be simulated; empty when it can */
  findings: Finding[]
}

/** One engine of the craft; RangeError when there is none of that number. */
export function breathView(craft: Craft, index: number): BreathView {
  const engine = craft.engines[index]
  if (!engine) throw new RangeError(`engines.${index}: the craft has ${craft.engines.length} engines`)
  const known = enginesFromCraft(craft)[index]!
  const view: BreathView = {
    index,
    name: known.name,
    kind: engine.kind,
    air: siteOf(craft).air.pressure,
    findings: [],
  }
  if (known.curve) view.given = givenLine(known.name, known.curve, known.trust)
  if (engine.kind !== 'two-stroke') return view
  const reading = twoStrokeFromCraft(craft, index)
  view.reading = reading
  if (!canSimulate(view))
    view.findings = twoStrokeFindings({ at: `engines.${index}`, name: view.name, ...reading })
  if (engine.exhaust) {
    const end = pipeEnd(craft, index)!
    view.pipe = drawnPipe(engine, end, reading)
    const box = boxOf(engine, end)
    if (box) view.box = box
  }
  return view
}

/** true when the file holds enough to simulate and nothing contradicts it */
export function canSimulate(view: BreathView): boolean {
  return view.reading?.spec !== undefined && view.reading.faults.length === 0
}

type TwoStrokeEngine = Extract<Craft['engines'][number], { kind: 'two-stroke' }>
type Exhaust = NonNullable<TwoStrokeEngine['exhaust']>

/** The duct in the cylinder, the pipe and the stinger, as built. */
function drawnPipe(
  engine: TwoStrokeEngine,
  { muffler, outlet }: PipeEnd,
  reading: TwoStrokeReading,
): DrawnPipe {
  const exhaust = engine.exhaust as Exhaust
  const duct = reading.spec?.pipe[0]
  const pipe: DrawnPipe = {
    segments: [
      ...(duct ? [{ ...duct, inCylinder: true }] : []),
      ...exhaust.pipe.map((s) => ({
        length: s.length.value,
        d0: s.from.value,
        d1: s.to.value,
        bend: s.bend.value,
        ...(s.name === undefined ? {} : { name: s.name }),
      })),
      ...(exhaust.stinger
        ? [
            {
              name: 'stinger',
              length: exhaust.stinger.length.value,
              d0: exhaust.stinger.bore.value,
              d1: exhaust.stinger.bore.value,
            },
          ]
        : []),
    ],
  }
  if (muffler) pipe.muffler = { length: muffler.length.value, width: muffler.width.value }
  if (outlet && outlet.length.value > 0)
    pipe.outlet = { length: outlet.length.value, bore: outlet.bore.value }
  return pipe
}

/** The muffler as the four-pole sum takes it; nothing without one, or when it cannot be built. */
function boxOf(engine: TwoStrokeEngine, { muffler: m, outlet }: PipeEnd): MufflerBox | undefined {
  const exhaust = engine.exhaust as Exhaust
  if (!m) return undefined
  const [w, h] = [m.width.value, m.height?.value]
  const last = exhaust.pipe[exhaust.pipe.length - 1]!.to.value
  const inlet = exhaust.stinger?.bore.value ?? last
  const box: MufflerBox = {
    length: m.length.value,
    area: h === undefined ? (Math.PI / 4) * w * w : w * h,
    inletBore: inlet,
    outletBore: outlet?.bore.value ?? 1.1 * inlet,
    inletReach: m.inletReach.value,
    outletReach: m.outletReach.value,
    packing: m.packing.value,
    resistivity: m.packingResistivity.value,
  }
  const tube = (Math.PI / 4) * Math.max(box.inletBore, box.outletBore) ** 2
  return box.inletReach + box.outletReach < box.length && tube < box.area ? box : undefined
}
