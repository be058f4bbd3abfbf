/** Weights, tanks, openings, foam, compartments or a rider outside the hull: asked about, not refused. */
import { inMetres, inPercent } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type Flag, flagOf } from '../../base/answers/solved.ts'
import { type Tank, tankMeshes } from '../../hull/aboard/liquids.ts'
import { deckHeight } from '../../hull/lines/hullBody.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { boundsOf, joined, type Vec3 } from '../../physics/solid/mesh.ts'
import { sliceBox } from '../../physics/solid/slice.ts'
import { litres } from './floatSay.ts'
import type { FloatInput } from './input.ts'
import { foamVolumes } from './swamped.ts'

const aside = (y: number): Sentence => say`${inMetres(Math.abs(y))} to ${y < 0 ? 'starboard' : 'port'}`
const place = (at: Vec3): Sentence => say`${inMetres(at[0])} forward, ${aside(at[1])}, ${inMetres(at[2])} up`

/** One question for each thing that stands where the hull is not. */
export function positionFlags(input: FloatInput): Flag[] {
  const { hull } = input
  const flags: Flag[] = []
  const size = say`the hull (${inMetres(hull.length)} long, ${inMetres(hull.beam)} wide)`
  const outside = (at: Vec3) =>
    at[0] < -0.5 || at[0] > hull.length + 0.3 || Math.abs(at[1]) > hull.beam / 2 + 0.1 || at[2] < -0.3
  for (const [i, w] of input.weights.entries())
    if (outside(w.at))
      flags.push(
        flagOf(
          'outside the hull',
          say`${w.name} is placed at ${place(w.at)}: outside ${size}. Is that meant?`,
          `weights.${i}.at`,
        ),
      )
  for (const [i, t] of (input.tanks ?? []).entries()) {
    const share = shareOutside(input, t)
    if (share > 0.02)
      flags.push(
        flagOf(
          'outside the hull',
          say`${inPercent(share)} of ${t.name} lies outside the hull, with the middle of its floor at ${place(t.foot)}. Is that meant?`,
          `tanks.${i}.foot`,
        ),
      )
  }
  const held = foamVolumes(hull, input.foam, input.water)
  const whole = input.foam.map((f) => foamVolumes(hull, [f], input.water)[0]!.volume)
  for (const [i, f] of input.foam.entries()) {
    const box = [0, 1, 2].reduce((v, k) => v * (f.high[k]! - f.low[k]!), 1)
    if (whole[i]! < 0.1 * box)
      flags.push(
        flagOf(
          'outside the hull',
          whole[i]! > 0
            ? say`Only ${litres(whole[i]!)} of the ${litres(box)} of foam "${f.name}" lie inside the hull, and only those count. Is that meant?`
            : `The foam "${f.name}" lies wholly outside the hull, so none of it counts. Is that meant?`,
          `foam.${i}`,
        ),
      )
  }
  for (const [i, f] of input.foam.entries()) {
    // held has it without what earlier blocks have
    const over = whole[i]! - held[i]!.volume
    if (over > 2e-4)
      flags.push(
        flagOf(
          'foam over foam',
          say`${litres(over)} of the foam "${f.name}" lie where other foam is already, and are counted once. Is that meant?`,
          `foam.${i}`,
        ),
      )
  }
  for (const [i, c] of input.compartments.entries())
    if (c.from > hull.length || c.to > hull.length + 0.1)
      flags.push(
        flagOf(
          'outside the hull',
          say`The compartment "${c.name}" reaches to ${inMetres(c.to)}, past the nose at ${inMetres(hull.length)}. Is that meant?`,
          `compartments.${i}.to`,
        ),
      )
  if (deckHeight(hull.mesh, input.rider.x, input.rider.y) === undefined)
    flags.push(
      flagOf(
        'rider off the deck',
        say`The rider stands at ${inMetres(input.rider.x)} forward, ${aside(input.rider.y)}, which is off the deck. Is that meant?`,
        'rider.position',
      ),
    )
  for (const [i, o] of input.openings.entries())
    if (outside(o.at))
      flags.push(
        flagOf(
          'outside the hull',
          say`The opening "${o.name}" is placed at ${place(o.at)}: outside ${size}. Is that meant?`,
          `openings.${i}.at`,
        ),
      )
  return flags
}

/** Share of the box round a tank that the hull does not hold; a tank that stands on the deck counts as inside. */
function shareOutside(input: FloatInput, t: Tank): number {
  const { mesh } = input.hull
  const deck = deckHeight(mesh, t.foot[0], t.foot[1])
  if (deck !== undefined && t.foot[2] > deck - 0.01) return 0
  const box = boundsOf(joined(tankMeshes(t.shape, t.foot)))
  const whole = [0, 1, 2].reduce((v, k) => v * (box.high[k]! - box.low[k]!), 1)
  const within = sliceBox(mesh, box.low, box.high)
  return whole > 0 ? 1 - (within ? solidProperties(within).volume : 0) / whole : 0
}
