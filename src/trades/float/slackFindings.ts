/** What the liquid in the tanks does to stability: the same craft with it running and with it frozen where it lies. */
import type { Finding } from '../../base/answers/finding.ts'
import { liquidsOf, liquidWeight, surfaceLoss, type Tank } from '../../hull/aboard/liquids.ts'
import { liquidIn } from '../../hull/afloat/energy.ts'
import { tankState } from '../../hull/afloat/load.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import type { FloatAnswer } from './floatAnswer.ts'
import { cm, kg, mm, naval, own } from './floatSay.ts'
import { rightingAt } from './heeled.ts'
import { aboardOf, type FloatInput, slackOf } from './input.ts'

const litresOf = (v: number): string => `${(1000 * v).toFixed(v < 0.02 ? 1 : 0)} L`

/** One finding for all tanks; none where there is no tank. */
export function slackFindings(input: FloatInput, a: FloatAnswer): Finding[] {
  const tanks = input.tanks ?? []
  const liquids = slackOf(input)
  if (tanks.length === 0 || a.ridden.sinks) return []
  const held = tanks.map((t) => `${t.name} holds ${litresOf(t.volume)} of ${litresOf(capacityOf(t))}`)
  const mass = aboardOf(input).reduce((m, w) => m + w.mass, 0) - input.weights.reduce((m, w) => m + w.mass, 0)
  const loss = surfaceLoss(liquids, a.ridden.mass)
  const { tanks: _, ...rest } = input
  const frozen: FloatInput = { ...rest, weights: aboardOf(input) }
  const heel = Math.PI / 9
  const given = rightingAt(frozen, heel, a.ridden.attitude) - rightingAt(input, heel, a.ridden.attitude)
  const gm = a.gmFeet.value
  const cells = tanks.some((t) => t.shape.kind === 'box' && t.shape.cells === 1)
    ? '; parted down the middle into two tight cells, a quarter'
    : ''
  const heavy = Number.isFinite(gm) && loss > 0.25 * Math.max(0, gm + loss)
  return [
    {
      id: 'float.slack',
      question: 'float',
      says:
        loss < 1e-5
          ? `${capital(held.join('; '))}: nothing in it can run, so it takes nothing from stability.`
          : `${capital(held.join('; '))}: running to the low side, it takes ${mm(loss)} from the GM${Number.isFinite(gm) ? ` of ${cm(gm + loss)}` : ''}${
              given >= 5e-4 ? `, and ${mm(given)} from the righting arm at 20°` : ''
            }.`,
      value: loss,
      unit: 'm',
      standing: heavy ? 'watch' : 'good',
      because: [
        { says: `${kg(mass)} of liquid, counted once, from the tanks`, link: 'tanks' },
        ...tanks.flatMap((t, i) => {
          const surface = widest(t)
          return surface > 0
            ? [{ says: `${t.name}: its surface is ${mm(surface)} across`, link: `tanks.${i}` }]
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

const capital = (s: string): string => s[0]!.toUpperCase() + s.slice(1)

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
