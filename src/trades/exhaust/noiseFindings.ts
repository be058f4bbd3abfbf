/** What the silencer takes away, how large it is, and how loud the outlet would be as it passes. */
import {
  inCelsius,
  inCount,
  inDb,
  inDbA,
  inFlowSpeed,
  inHertz,
  inKw,
  inLitres,
  inMetres,
  inTimes,
  withEnds,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import { exhaustGas } from './backPressure.ts'
import type { ExhaustLimits } from './exhaustLimits.ts'
import { boxTemperature, type ExhaustView, finding } from './exhaustView.ts'
import { floorAtOneMetre, outletLevel, passByLimit, sumOfLevels } from './level.ts'
import { boxLoss, boxVolume } from './muffler.ts'
import { hotResistivity, straightThroughLoss } from './packing.ts'

const munjal = 'M. L. Munjal, Acoustics of Ducts and Mufflers (2014); NACA Report 1192 (1954)'
const directive = 'Directive 2013/53/EU, Annex I part C; measured by EN ISO 14509'

/** Loss of the box at the firing note and its weakest place, in gas at box temperature. */
export function mufflerOf(v: ExhaustView, limits: ExhaustLimits): Finding | undefined {
  const { box, boxName: name, at, air } = v.inputs
  if (!box)
    return finding(v, 'muffler', {
      says: say`${name} has no muffler in the file: an open stinger is some ${inDb(20)} louder than one behind a box of a litre or two.`,
      act: say`a box of ${inLitres(limits.boxUsual.value * v.inputs.swept * v.inputs.pipes)} or more, ten swept volumes`,
      harm: 'comfort',
      standing: 'watch',
      because: [{ says: 'no muffler given', link: `${at}.exhaust.muffler` }],
      sources: ['this project’s own simulation of a 125 cm³ engine'],
    })
  if (!v.run) return undefined
  const t = boxTemperature(v.run.exhaustT, air.t)
  const c = Math.sqrt(exhaustGas.gamma * exhaustGas.gasConstant * t)
  const density = air.p / (exhaustGas.gasConstant * t)
  const firing = v.run.rotation
  const list = [firing, ...Array.from({ length: 60 }, (_, i) => 100 * 1.04 ** i)]
  let curve: ReturnType<typeof boxLoss>
  try {
    curve = boxLoss(box, list, c, density)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return finding(v, 'muffler', {
      says: say`${name}: the muffler cannot be built as given: ${error.message}.`,
      standing: 'stop',
      because: [{ says: 'box and tubes in the craft file', link: `${at}.exhaust.muffler` }],
      sources: ['The craft file'],
    })
  }
  const upTo = Math.min(1000, curve.planeTo)
  // the weakest place among the overtones; the firing note itself is said apart
  let weak = list.findIndex((f) => f > 1.5 * firing && f !== firing)
  for (let i = weak; i < list.length; i++)
    if (list[i]! <= upTo && curve.loss[i]! < curve.loss[weak]!) weak = i
  const first = curve.loss[0]!
  const least = curve.loss[weak]!
  return finding(v, 'muffler', {
    says: say`${name}: the box takes ${inDb(first)} off the firing note of ${inHertz(firing)}, and off its overtones up to ${inHertz(upTo, 10)} no less than ${inDb(Math.max(0, least))} (near ${inHertz(list[weak]!, 10)}); real boxes with flow fall short of this cold theory.`,
    ...(first < limits.firingLoss.value
      ? { act: say`a box larger than ${inLitres(boxVolume(box))}, or tubes that reach further in` }
      : {}),
    harm: 'comfort',
    value: first,
    unit: 'dB',
    standing: first < limits.firingLoss.value ? 'watch' : 'good',
    because: [
      {
        says: say`box ${inLitres(boxVolume(box))}, gas near ${inCelsius(t)}, sound speed ${inFlowSpeed(c, 1)}`,
        link: `${at}.exhaust.muffler`,
      },
      { says: say`plane waves hold to ${inHertz(curve.planeTo)}` },
      box.packing > 0
        ? {
            says: 'packing is counted at half its computed value; on the water it soaks: count on the empty box',
            link: `${at}.exhaust.muffler.packing`,
          }
        : {
            says: 'tubes that reach in by half and by a quarter of the box’s length close its gaps',
            link: `${at}.exhaust.muffler.inlet reach`,
          },
    ],
    sources: [munjal],
  })
}

export function boxSizeOf(v: ExhaustView, limits: ExhaustLimits): Finding | undefined {
  const { box, boxName: name, at, pipes } = v.inputs
  if (!box) return undefined
  const swept = v.inputs.swept * pipes
  const times = boxVolume(box) / swept
  const usual = limits.boxUsual.value
  return finding(v, 'box-size', {
    says: say`${name}: the box holds ${inTimes(times, 1)} times the ${pipes > 1 ? 'cylinders' : 'cylinder'}${times < usual ? say`; ${inTimes(usual, 1)} times or more is usual` : ''}.`,
    ...(times < usual ? { act: say`a box of ${inLitres(usual * swept)}` } : {}),
    harm: 'comfort',
    value: times,
    unit: '1',
    standing: times < limits.boxLeast.value ? 'stop' : times < usual ? 'watch' : 'good',
    because: [
      { says: 'size hardly matters for power, much for noise', link: `${at}.exhaust.muffler` },
      { says: 'rule of ten to twenty swept volumes: from memory, no source' },
    ],
    sources: ['common practice, no source'],
  })
}

/** where a craft is heard as it passes, m (EN ISO 14509) */
const passAt = 25

/** the level of one outlet is no better known than this, dB */
const levelDoubt = 5

export function levelOf(v: ExhaustView, limits: ExhaustLimits): Finding | undefined {
  const { box, boxName: name, air, pipes } = v.inputs
  const run = v.run
  if (!run || run.outFlow.length < 90) return undefined
  const t = boxTemperature(run.exhaustT, air.t)
  const c = Math.sqrt(exhaustGas.gamma * exhaustGas.gasConstant * t)
  const density = air.p / (exhaustGas.gasConstant * t)
  const loss = (f: number): number => {
    if (!box || box.packing <= 0) return 0
    const outer = Math.sqrt((4 * box.area) / Math.PI)
    const bore = Math.max(box.inletBore, outer - 2 * box.packing)
    if (bore >= outer) return 0
    const resistivity = hotResistivity(box.resistivity, t)
    return 0.5 * box.length * straightThroughLoss({ bore, outer, resistivity, density, c }, f)
  }
  const one = outletLevel(run.outFlow, run.rotation, passAt, loss)
  const outlets = v.inputs.cylinders * run.engines
  const floor = floorAtOneMetre - 20 * Math.log10(passAt)
  const level = sumOfLevels([one.outlet + 10 * Math.log10(outlets), floor])
  const limit = passByLimit(run.power, run.engines)
  const over = level - limit
  return finding(v, 'level', {
    says: say`${name}${run.engines > pipes ? ', with the others,' : ''} would sound about ${withEnds(inDbA(level), { low: level - levelDoubt, high: level + levelDoubt })} at ${inMetres(passAt, 1)} at the power peak, ${Math.abs(over) < 0.5 ? 'just at' : say`${inDb(Math.abs(over))} ${over > 0 ? 'over' : 'under'}`} the ${inDbA(limit)} published for this power.`,
    ...(over > limits.levelUnder.value
      ? { act: 'a larger box or packing that stays dry; ask the local authority what your water allows' }
      : {}),
    harm: 'comfort',
    value: level,
    low: level - levelDoubt,
    high: level + levelDoubt,
    unit: 'dB(A)',
    // one law of one region, measured in another way: never a reason to stop by itself
    standing: over > limits.levelUnder.value ? 'watch' : 'good',
    because: [
      {
        says: say`the outlet’s pulses alone make ${inDbA(one.outlet)}; jet noise, shell, intake and hull put a floor of ${inDbA(floor)} under it that no muffler takes away (common practice, no source)`,
      },
      ...(one.onFloor ? [{ says: 'the floor, not the outlet, sets this figure' }] : []),
      {
        says: say`${inKw(run.power)}, ${inCount(run.engines)} engine${run.engines > 1 ? 's' : ''}`,
        link: 'engines',
      },
      {
        says: 'not a measurement and no proof of anything: waters have their own rules, ask the local authority',
      },
    ],
    measureNext: {
      what: 'the level as it passes at 25 m',
      with: 'sound level meter, or a phone for a rough figure',
      minutes: 30,
    },
    sources: [
      'A. P. Dowling and J. E. Ffowcs Williams, Sound and Sources of Sound (1983); IEC 61672-1:2013',
      directive,
    ],
  })
}
