/** Drag and trim of a craft with its rider where the file says, beside the best place: worked out once for judgement and tables. */
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import { meshNotUsed, namedMesh } from '../../hull/mesh/namedMesh.ts'
import { type DragModel, type DragPoint, dragAt, dragCurve, prepareDrag } from './drag.ts'
import { type HullInputs, hullFromCraft, meshGivesLines } from './dragFromCraft.ts'
import { type HumpPoint, humpOf } from './hump.ts'

export interface DragInputs extends HullInputs {
  /** m forward of the transom, front edge of the jet's intake */
  intakeFront: number
  /** m/s, as fast as the craft goes: speeds are looked at up to there */
  fastest: number
  /** the hull file that is named, and why the drag does not rest on it */
  meshUnused?: { name: string; says: Sentence }
}

/** m/s looked at where no top speed is known, and at least */
const usualTop = 10
const leastTop = 2

/** `topSpeed` (m/s) by the balance, where there is one. RangeError on a rider out of range. */
export function dragInputs(craft: Craft, topSpeed?: number): DragInputs {
  const unused = meshUnused(craft)
  return {
    ...hullFromCraft(craft),
    intakeFront: craft.jet.intake.front.value,
    fastest: topSpeed !== undefined && Number.isFinite(topSpeed) ? Math.max(leastTop, topSpeed) : usualTop,
    ...(unused ? { meshUnused: unused } : {}),
  }
}

/** A hull file that is named and gives the drag methods nothing to work with. */
function meshUnused(craft: Craft): DragInputs['meshUnused'] {
  const named = namedMesh(craft)
  if (!named || ('hull' in named && meshGivesLines(craft))) return undefined
  const name = String(craft.hull.mesh)
  const says =
    'trouble' in named
      ? meshNotUsed(craft, named.trouble).text
      : say`${name} has sections that are not one ring each: it floats by its own shape, but the lines for its drag are taken from the measures in the file.`
  return { name, says }
}

/** m the rider is moved to see what a step buys */
const step = 0.2

export interface Answered {
  /** speeds to the fastest, the rider where the file says */
  here: readonly DragPoint[]
  /** the worst of the climb with the rider where the file says, in the best place, and a step towards it */
  climb: { speed: number; now: DragPoint; best: DragPoint; step: number; moved: DragPoint }
  /** at the fastest, the same */
  top: { now: DragPoint; best: DragPoint }
  /** the climb with the rider in the best place */
  hump: HumpPoint
}

export interface DragAnswer {
  model: DragModel
  /** absent where no level float was found */
  answered?: Answered
}

/** speeds looked at */
const count = 41

export function dragAnswer(inputs: DragInputs): DragAnswer {
  const { spec, loading, conditions, riderAt, float, fastest } = inputs
  const model = prepareDrag(spec, loading, conditions, float ? { float } : {})
  if (!model.rest.converged) return { model }
  const speeds = Array.from({ length: count }, (_, i) => 0.5 + ((fastest - 0.5) * i) / (count - 1))
  const { speed, point: now } = humpOf(model, { riderAt })
  const best = dragAt(model, speed)
  const to = best.riderAt > riderAt ? step : -step
  return {
    model,
    answered: {
      here: dragCurve(model, speeds, { riderAt }),
      climb: { speed, now, best, step: to, moved: dragAt(model, speed, { riderAt: riderAt + to }) },
      top: { now: dragAt(model, fastest, { riderAt }), best: dragAt(model, fastest) },
      hump: humpOf(model),
    },
  }
}
