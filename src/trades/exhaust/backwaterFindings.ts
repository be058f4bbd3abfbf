/** Water and the exhaust outlet: where it spills over, what it may draw in, and a flap over it. How high its lip stands is judged in float. */
import { inCelsius, inCm, inDegrees, inKpa, inLitres, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { ExhaustLimits } from './exhaustLimits.ts'
import { type ExhaustView, finding, overWater } from './exhaustView.ts'
import { boxVolume } from './muffler.ts'
import { drawnIn, flapOpening, heights, judgeSpill } from './outlet.ts'

const inboard =
  'ABYC P-1 and inboard practice, as summarised in the boating press; margins for this size are this project’s own'

/** fall of an exhaust to its outlet, rad */
const fallWanted = (2 * Math.PI) / 180

export function waterOf(v: ExhaustView, limits: ExhaustLimits): Finding[] {
  const { outlet, boxName: name, at, box, pipeVolume, waterT, waterDensity } = v.inputs
  const known = v.outlet !== undefined || outlet?.assumed === false
  const out: Finding[] = known ? [] : [heightUnknown(v)]
  if (!outlet) return out
  // its height is judged where the craft floats, and nowhere else
  const lip = v.outlet?.height ?? outlet.height - outlet.bore / 2
  const spill = judgeSpill(outlet.highPoint)
  out.push(
    finding(v, 'spill', {
      says: say`${name}: the highest place inside the exhaust is ${overWater(outlet.highPoint)} the water; ${inCm(heights.spill.want)} is what inboard boats have, as high as possible is right here.`,
      ...(spill === 'good' ? {} : { act: say`a riser ${inCm(heights.spill.want)} over the water inside` }),
      harm: 'before the water',
      value: outlet.highPoint,
      unit: 'm',
      standing: spill,
      because: [
        { says: 'past that height water runs to the engine', link: `${at}.exhaust.outlet.high point` },
        outlet.fall === undefined
          ? {
              says: say`the fall to the outlet is not in the file; ${inDegrees(fallWanted, 1)} all the way is wanted`,
              link: `${at}.exhaust.outlet.fall`,
            }
          : {
              says: say`falls ${inDegrees(outlet.fall)} to the outlet; ${inDegrees(fallWanted, 1)} is wanted`,
              link: `${at}.exhaust.outlet.fall`,
            },
      ],
      sources: [inboard],
    }),
  )
  const hot = v.run ? 0.75 * v.run.exhaustT : 650
  const share = drawnIn(hot, waterT)
  const volume = share * (pipeVolume + (box ? boxVolume(box) : 0))
  out.push(
    finding(v, 'suction', {
      says: say`${name}: shut down with the outlet under water, the cooling pipe would draw in up to ${inLitres(volume)}${outlet.vent ? ', which the vent at the high point prevents while it is clear' : ''}.`,
      ...(outlet.vent ? {} : { act: say`a vent of ${inMm(3e-3)} to ${inMm(4e-3)} at the high point` }),
      harm: 'before the water',
      value: volume,
      unit: 'm³',
      standing: outlet.vent ? 'good' : v.outlet?.standing === 'stop' ? 'stop' : 'watch',
      because: [
        ...(v.outlet
          ? [{ says: say`its lip is ${overWater(lip)} still water at rest`, link: v.outlet.path }]
          : []),
        {
          says: say`gas from about ${inCelsius(hot)} to ${inCelsius(waterT)} shrinks by ${inPercent(share)}`,
          link: `${at}.exhaust.outlet.vent`,
        },
        outlet.drain
          ? {
              says: 'the drain at the lowest place lets out what came in',
              link: `${at}.exhaust.outlet.drain`,
            }
          : {
              says: 'no drain in the file: water that came in stays in the box',
              link: `${at}.exhaust.outlet.drain`,
            },
        {
          says: 'after a capsize: right it the way that keeps the outlet high, and turn it over with the plug out first',
        },
      ],
      sources: ['Ideal gas at constant pressure', inboard],
    }),
  )
  if (outlet.flap) out.push(flapOf(v, lip, waterDensity, limits))
  return out
}

/** Neither an opening nor a height says where the outlet is; a height that is only assumed says nothing. */
function heightUnknown(v: ExhaustView): Finding {
  const { boxName: name, at, outlet } = v.inputs
  return finding(v, 'outlet', {
    says: say`${name}: how high the exhaust outlet stands over the water is not in the file.`,
    standing: 'unknown',
    because: [
      outlet
        ? {
            says: 'no opening is its outlet, and its height is only assumed',
            link: `${at}.exhaust.outlet.height`,
          }
        : { says: 'no outlet given', link: `${at}.exhaust.outlet` },
    ],
    measureNext: {
      what: 'the outlet’s lowest lip over the water, loaded',
      with: 'tape',
      minutes: 5,
      path: `${at}.exhaust.outlet`,
    },
    sources: ['The craft file'],
  })
}

/** A flap of rubber sheet over the hole: 1.3 bores across, 1.5 to 3 mm thick, hinged at its top. */
function flapOf(v: ExhaustView, lip: number, density: number, limits: ExhaustLimits): Finding {
  const { outlet, boxName: name, at } = v.inputs
  const side = 1.3 * outlet!.bore
  const opening = (thickness: number): number => {
    // rubber 1200 kg/m³; hanging at 20 degrees off the upright, its weight shuts it
    const weight = 1200 * side * side * thickness * 9.80665
    return flapOpening(
      {
        area: (Math.PI / 4) * outlet!.bore ** 2,
        arm: side / 2,
        weightMoment: weight * (side / 2) * Math.sin(0.35),
        elasticMoment: 0,
      },
      Math.max(0, -lip + outlet!.bore / 2),
      density,
    )
  }
  const [low, high] = [opening(1.5e-3), opening(3e-3)]
  const idle = limits.flapIdle.value
  return finding(v, 'flap', {
    says: say`${name}: the flap opens at ${inKpa(low, 0.01)} to ${inKpa(high, 0.01)}${high > idle ? say`; at idle the box has only about ${inKpa(idle, 0.01)}, so expect stalling and burbling` : ''}. It is a splash guard, not a seal.`,
    ...(high > idle ? { act: say`thinner rubber than ${inMm(1.5e-3, 0.1)}, or none` } : {}),
    value: 0.5 * (low + high),
    low,
    high,
    unit: 'Pa',
    standing: high > idle ? 'watch' : 'good',
    because: [
      {
        says: say`flap taken as rubber sheet of ${inMm(1.5e-3, 0.1)} to ${inMm(3e-3)}, 1.3 bores across`,
        link: `${at}.exhaust.outlet.flap`,
      },
      { says: 'flaps leak, stick open on carbon and fold in reverse flow (common practice, no source)' },
    ],
    sources: ['Hydrostatics', 'common practice, no source'],
  })
}
