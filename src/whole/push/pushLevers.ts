import { printed } from '../../base/answers/sentence.ts'
/** The few inputs that move the answer most, in order of what they do, for the page's sliders. */
import type { Craft } from '../../craft/index.ts'
import type { Balance, Change, LeftWithOneDead } from './balanceTypes.ts'
import { type Look, says, saysStep, systemOf } from './shown.ts'

export interface Lever {
  /** craft path */
  path: string
  /** what moving it does, in words; absent until changes are worked out */
  effect?: string
  /** slider ends, SI; absent for words and flags */
  low?: number
  high?: number
}

/** How much one change does, as a share of now: speed and pull weigh alike. */
function weight(c: Change, b: Balance): number {
  const part = (step: number, now: number) => (Number.isFinite(step / now) ? Math.abs(step / now) : 0)
  return part(c.topSpeed.value, b.topSpeed.value) + part(c.pull.value, b.pull.value)
}

function effectOf(c: Change, look: Look): string {
  const speed = Number.isFinite(c.topSpeed.value) ? `${saysStep(c.topSpeed.value, 'speed', look)}, ` : ''
  return `${printed(c.says, systemOf(look))}: ${speed}${saysStep(c.pull.value, 'force', look)} of pull`
}

/** Sliders of the page, strongest first; words and engines after the numbers. */
export function leversFor(craft: Craft, b: Balance, look: Look): Lever[] {
  const around = (path: string, value: number, low: number, high: number): Lever => ({
    path,
    low: value * low,
    high: value * high,
  })
  const { rotor, nozzle } = craft.jet
  const length = craft.hull.length.value
  const ranked = [
    around('jet.rotor.pitch', rotor.pitch.value, 0.65, 1.4),
    { path: 'jet.rotor.blades', low: 2, high: 6 },
    around('jet.nozzle.bore', nozzle.bore.value, 0.8, 1.2),
    around('drive.ratio', craft.drive.ratio.value, 0.7, 1.5),
  ]
    .map((lever) => {
      const best = b.changes
        .filter((c) => c.path === lever.path && Number.isFinite(c.pull.value))
        .sort((x, y) => weight(y, b) - weight(x, b))[0]
      return best
        ? { lever: { ...lever, effect: effectOf(best, look) }, weight: weight(best, b) }
        : { lever, weight: 0 }
    })
    .sort((x, y) => y.weight - x.weight)
    .map((r) => r.lever as Lever)
  const many = craft.engines.length > 1
  const dead = b.oneDead
  const left = (l: LeftWithOneDead) =>
    l.stalls
      ? 'the rest stalls'
      : `${says(l.pull.value, 'force', look)} of pull, ${says(l.topSpeed.value, 'speed', look)}`
  const pulls = dead && `one dead: ${left(dead)}`
  const free = dead?.withClutch && `one dead behind a one-way clutch: ${left(dead.withClutch)}`
  return [
    ...ranked,
    { path: 'rider.mass', low: 40, high: 130 },
    {
      path: 'rider.position',
      low: 0.1 * length,
      high: 0.75 * length,
      effect: craft.rider.moves
        ? 'moves the drag of a rider who keeps still; the answer takes the best place at each speed'
        : 'the rider stays here at every speed',
    },
    {
      path: 'rider.moves',
      effect: 'no holds the rider at the position, as when learning or steering with both hands',
    },
    ...(many
      ? [
          { path: 'drive.clutch', ...(free ? { effect: free } : {}) },
          ...craft.engines.map((_, i) => ({
            path: `engines.${i}.running`,
            ...(pulls ? { effect: pulls } : {}),
          })),
        ]
      : []),
  ]
}
