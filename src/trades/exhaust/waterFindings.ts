/** Water and the exhaust outlet: its height, what it may draw in, and a flap over it. */
import { inCelsius, inCm, inDegrees, inKpa, inLitres, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Because, Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { ExhaustLimits } from './exhaustLimits.ts'
import { type ExhaustView, finding, overWater } from './exhaustView.ts'
import { boxVolume } from './muffler.ts'
import { drawnIn, flapOpening, heights, judgeOutlet } from './outlet.ts'

const inboard =
  'ABYC P-1 and inboard practice, as summarised in the boating press; margins for this size are this project’s own'

/** fall of an exhaust to its outlet, rad */
const fallWanted = (2 * Math.PI) / 180

export function waterOf(v: ExhaustView, limits: ExhaustLimits): Finding[] {
  const { outlet, name, at, box, pipeVolume, waterT, waterDensity } = v.inputs
  if (!outlet)
    return [
      finding(v, 'outlet', {
        says: say`${name}: how high the exhaust outlet stands over the water is not in the file.`,
        standing: 'unknown',
        because: [{ says: 'no outlet given', link: `${at}.exhaust.outlet` }],
        measureNext: {
          what: 'the outlet’s lowest lip over the water, loaded',
          with: 'tape',
          minutes: 5,
          path: `${at}.exhaust.outlet`,
        },
        sources: ['The craft file'],
      }),
    ]
  const byFile = outlet.height - outlet.bore / 2
  const lip = Math.min(byFile, v.lipAfloat ?? Number.POSITIVE_INFINITY)
  const judged = judgeOutlet({ lip, spill: outlet.highPoint })
  const out: Finding[] = []
  const from: Because[] = [
    {
      says: say`the file’s height gives ${inCm(byFile)}${outlet.assumed ? ', assumed' : ''}`,
      link: `${at}.exhaust.outlet.height`,
    },
    ...(v.lipAfloat === undefined
      ? []
      : [{ says: say`the craft’s own float line gives ${inCm(v.lipAfloat)}`, link: 'openings' }]),
  ]
  out.push(
    finding(v, 'outlet', {
      says: say`${name}: the lowest lip of the outlet is ${overWater(lip)} still water; ${inCm(heights.lip.warn)} keep splashes out, under ${inCm(heights.lip.refuse)} it floods.`,
      ...(lip < heights.lip.warn ? { act: say`raise its lip by ${inCm(heights.lip.warn - lip)}` } : {}),
      harm: 'before the water',
      value: lip,
      unit: 'm',
      standing: outlet.assumed && v.lipAfloat === undefined && judged.lip === 'good' ? 'unknown' : judged.lip,
      because: [
        ...from,
        { says: 'look at it again with the rider right aft, at rest, and in a following sea' },
      ],
      measureNext: {
        what: 'the outlet’s lowest lip over the water, rider aft',
        with: 'tape',
        minutes: 5,
        path: `${at}.exhaust.outlet.height`,
      },
      sources: [inboard],
    }),
    finding(v, 'spill', {
      says: say`${name}: the highest place inside the exhaust is ${overWater(outlet.highPoint)} the water; ${inCm(heights.spill.want)} is what inboard boats have, as high as possible is right here.`,
      ...(judged.spill === 'good'
        ? {}
        : { act: say`a riser ${inCm(heights.spill.want)} over the water inside` }),
      harm: 'before the water',
      value: outlet.highPoint,
      unit: 'm',
      standing: judged.spill,
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
  const canDip = lip < heights.lip.warn
  out.push(
    finding(v, 'suction', {
      says: say`${name}: shut down with the outlet under water, the cooling pipe would draw in up to ${inLitres(volume)}${outlet.vent ? ', which the vent at the high point prevents while it is clear' : ''}.`,
      ...(outlet.vent ? {} : { act: say`a vent of ${inMm(3e-3)} to ${inMm(4e-3)} at the high point` }),
      harm: 'before the water',
      value: volume,
      unit: 'm³',
      standing: outlet.vent ? 'good' : canDip ? (judged.lip === 'stop' ? 'stop' : 'watch') : 'watch',
      because: [
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

/** A flap of rubber sheet over the hole: 1.3 bores across, 1.5 to 3 mm thick, hinged at its top. */
function flapOf(v: ExhaustView, lip: number, density: number, limits: ExhaustLimits): Finding {
  const { outlet, name, at } = v.inputs
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
