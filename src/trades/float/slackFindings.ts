/** What the liquid in the tanks does to stability: the same craft with it running and with it frozen where it lies. */
import { inDegrees, inLitres, inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import { liquidsOf, liquidWeight, type Tank } from '../../hull/aboard/liquids.ts'
import { liquidIn } from '../../hull/afloat/energy.ts'
import { tankState } from '../../hull/afloat/load.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import type { FloatLimits } from './floatLimits.ts'
import { cm, kg, naval, own } from './floatSay.ts'
import { aboardOf, type FloatInput } from './input.ts'
import { slackHeel } from './slackLoss.ts'

const litresOf = (v: number) => inLitres(v, v < 0.02 ? 0.1 : 1)

/** One finding for all tanks; none where there is no tank. */
export function slackFindings(input: FloatInput, a: FloatAnswer, limits: FloatLimits): Finding[] {
  const tanks = input.tanks ?? []
  if (a.slack === undefined) return []
  const { gm: loss, arm: given } = a.slack
  const held = joined(
    tanks.map((t) => say`${t.name} holds ${litresOf(t.volume)} of ${litresOf(capacityOf(t))}`),
    '; ',
  )
  const mass = aboardOf(input).reduce((m, w) => m + w.mass, 0) - input.weights.reduce((m, w) => m + w.mass, 0)
  const gm = a.gmFeet.value
  const cells = tanks.some((t) => t.shape.kind === 'box' && t.shape.cells === 1)
    ? '; parted down the middle into two tight cells, a quarter'
    : ''
  const ofGm: Sentence = Number.isFinite(gm) ? say` of ${cm(gm + loss)}` : ''
  const fromArm: Sentence =
    given >= 5e-4 ? say`, and ${inMm(given)} from the righting arm at ${inDegrees(slackHeel, 1)}` : ''
  const heavy = Number.isFinite(gm) && loss > limits.slackShare.value * Math.max(0, gm + loss)
  return [
    {
      id: 'float.slack',
      question: 'float',
      says: whole(
        loss < 1e-5
          ? say`${held}: nothing in it can run, so it takes nothing from stability.`
          : say`${held}: running to the low side, it takes ${inMm(loss)} from the GM${ofGm}${fromArm}.`,
      ),
      value: loss,
      unit: 'm',
      standing: heavy ? 'watch' : 'good',
      because: [
        { says: say`${kg(mass)} of liquid, counted once, from the tanks`, link: 'tanks' },
        ...tanks.flatMap((t, i) => {
          const surface = widest(t)
          return surface > 0
            ? [{ says: say`${t.name}: its surface is ${inMm(surface)} across`, link: `tanks.${i}` }]
            : []
        }),
        ...(loss >= 1e-5 ? [{ says: `full or empty it takes nothing${cells}` }] : []),
        ...(tanks.some((t) => t.density < 900)
          ? [
              {
                says: 'Caution: fuel runs aft as the bow rises; keep its vent above the water at every heel and its cap shut',
              },
            ]
          : []),
      ],
      measureNext: {
        what: 'dip a clean stick into each tank as it sets out, level, away from flames',
        with: 'stick',
        minutes: 2,
        path: 'tanks',
      },
      sources: [own, naval],
    },
  ]
}

const capacityOf = (t: Tank): number =>
  t.shape.kind === 'box'
    ? t.shape.length * t.shape.width * t.shape.height
    : (Math.PI / 4) *
      t.shape.diameter ** 2 *
      (t.shape.kind === 'lying cylinder' ? t.shape.length : t.shape.height)

/** Breadth across the craft of a rectangle with the same second moment a length as the free surface of one cell, m; 0 when it has none. */
function widest(t: Tank): number {
  if (!liquidWeight(t)) return 0
  const one = liquidsOf(t)[0]!
  const { inertia } = liquidIn(tankState(one), makeFrame())
  if (!(inertia > 0)) return 0
  if (t.shape.kind === 'box') return t.shape.width / t.shape.cells
  if (t.shape.kind === 'standing cylinder') return t.shape.diameter
  if (t.shape.lies === 'across') return t.shape.length
  return Math.cbrt((12 * inertia) / t.shape.length)
}
