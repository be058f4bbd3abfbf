/**
 * What a printed part bears, and how thick it has to be for that. A print is allowed its strength over four where the load stays, over eight where it
 * comes again and again, and the share of it that is left across its layers where it pulls them apart (common practice of printed parts, no source).
 * Discs: S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells (1959), art. 16, simply held, load on a round patch in the middle.
 * Beams, rings in bending and pull: any handbook of strength, exact. SI.
 */
import { inMm, inMpa, inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { PartLimits } from './partLimits.ts'
import type { PrintMaterial } from './printerOf.ts'
import { petrolProof, printPlastics } from './printPlastics.ts'

/** What asks a part, where it is weakest. */
export interface PartLoad {
  /** what does it, with its number: "a foot of 780 N in the middle of the lid" */
  by: Sentence
  /** Pa, at the thickness it is drawn with */
  stress: number
  /** whether it pulls layers apart */
  across: boolean
  /** it comes again and again */
  often: boolean
  /** craft path that the load comes from */
  link: string
  /** what to do where no print bears it */
  instead: Sentence
}

/** Stress a print of a material may be asked for long, Pa. */
export function bears(
  material: PrintMaterial,
  { across, often }: Pick<PartLoad, 'across' | 'often'>,
  limits: PartLimits,
): number {
  const { strength, across: share } = printPlastics[material]
  return (strength * (across ? share : 1)) / (often ? limits.again : limits.steady).value
}

/** Least thickness of `usual` and above, in steps of half a millimetre, at which a stress is borne; `most` where none up to it is. */
export function thickEnough(
  stressAt: (thickness: number) => number,
  borne: number,
  usual: number,
  most: number,
): number {
  const step = 0.5e-3
  for (let t = usual; t < most; t += step) if (stressAt(t) <= borne) return t
  return most
}

/** Poisson's ratio of plastics, from memory */
const poisson = 0.38

/** Largest bending stress of a disc simply held at `radius`, Pa: force N on a patch of radius `patch` in its middle, `thick` m. */
export function discBending(force: number, radius: number, patch: number, thick: number): number {
  const c = Math.min(patch, radius)
  const moment =
    (force / (4 * Math.PI)) *
    ((1 + poisson) * Math.log(radius / c) + 1 - ((1 - poisson) * c * c) / (4 * radius * radius))
  return (6 * moment) / thick ** 2
}

/** Bending stress at the foot of a bar `wide` across, `deep` in the way of the force, Pa. */
export const barBending = (force: number, arm: number, wide: number, deep: number): number =>
  (6 * force * arm) / (wide * deep ** 2)

/** Bending stress at the foot of a tube, Pa. RangeError where its bore is not less than it is across. */
export function tubeBending(force: number, arm: number, across: number, bore: number): number {
  if (!(bore < across)) throw new RangeError(`bore: ${bore} m, expected less than ${across} m`)
  return (32 * force * arm * across) / (Math.PI * (across ** 4 - bore ** 4))
}

/** The verdict on a part's load: how much of what it bears is asked. */
export function strengthFinding(
  part: { id: string; title: string; material: PrintMaterial },
  load: PartLoad,
  limits: PartLimits,
): Finding {
  const borne = bears(part.material, load, limits)
  const share = load.stress / borne
  const enough = share <= 1
  // a stronger plastic is offered where it is enough and bears petrol as well
  const other = petrolProof.find((m) => bears(m, load, limits) >= load.stress)
  return {
    id: `prints.part.${part.id}.strength`,
    question: 'make',
    says: say`${part.title}: ${load.by} asks ${inMpa(load.stress, 0.1)} of it, ${inPercent(share)} of what such a print of ${part.material} is reckoned to bear ${load.often ? 'again and again' : 'for long'}.`,
    value: share,
    unit: '1',
    standing: enough ? 'good' : 'watch',
    because: [
      {
        says: say`${part.material} bears ${inMpa(borne, 0.1)} ${load.across ? 'across' : 'along'} its layers`,
        link: 'printer.material',
      },
      { says: load.by, link: load.link },
    ],
    ...(enough ? {} : { act: other ? say`print it of ${other}` : load.instead, harm: 'will stop the run' }),
    sources: [
      'Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959); beams by any handbook',
      'strength over four, or eight where it comes again and again: common practice, no source',
    ],
  }
}

/** A thickness in words, for the parts that are drawn as thick as their load asks. */
export const thickSays = (thick: number): Sentence => say`${inMm(thick, 0.5)} thick, as its load asks`
