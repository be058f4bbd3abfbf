/** What the silencer takes away, how large it is, and how loud the outlet would be as it passes. */
import type { Finding } from '../../base/answers/finding.ts'
import { exhaustGas } from './backPressure.ts'
import { boxTemperature, dB, type ExhaustView, finding } from './exhaustView.ts'
import { floorAtOneMetre, outletLevel, passByLimit, sumOfLevels } from './level.ts'
import { boxLoss, boxVolume } from './muffler.ts'
import { hotResistivity, straightThroughLoss } from './packing.ts'

const munjal = 'M. L. Munjal, Acoustics of Ducts and Mufflers (2014); NACA Report 1192 (1954)'
const directive = 'Directive 2013/53/EU, Annex I part C; measured by EN ISO 14509'

/** Loss of the box at the firing note and its weakest place, in gas at box temperature. */
export function mufflerOf(v: ExhaustView): Finding | undefined {
  const { box, name, at, air } = v.inputs
  if (!box)
    return finding(v, 'muffler', {
      says: `${name} has no muffler in the file: an open stinger is some 20 dB louder than one behind a box of a litre or two.`,
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
      says: `${name}: the muffler cannot be built as given: ${error.message}.`,
      standing: 'stop',
      because: [{ says: error.message, link: `${at}.exhaust.muffler` }],
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
    says: `${name}: the box takes ${first.toFixed(0)} dB off the firing note of ${firing.toFixed(0)} Hz, and off its overtones up to ${(upTo / 10).toFixed(0)}0 Hz no less than ${Math.max(0, least).toFixed(0)} dB (near ${(list[weak]! / 10).toFixed(0)}0 Hz); real boxes with flow fall short of this cold theory.`,
    value: first,
    unit: 'dB',
    standing: first < 5 ? 'watch' : 'good',
    because: [
      {
        says: `box ${(1000 * boxVolume(box)).toFixed(1)} L, gas near ${(t - 273.15).toFixed(0)} °C, sound speed ${c.toFixed(0)} m/s`,
        link: `${at}.exhaust.muffler`,
      },
      { says: `plane waves hold to ${curve.planeTo.toFixed(0)} Hz` },
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

export function boxSizeOf(v: ExhaustView): Finding | undefined {
  const { box, swept, name, at } = v.inputs
  if (!box) return undefined
  const times = boxVolume(box) / swept
  return finding(v, 'box-size', {
    says: `${name}: the box holds ${times.toFixed(0)} times the cylinder${times < 10 ? '; ten times or more is usual' : ''}.`,
    value: times,
    unit: '1',
    standing: times < 1 ? 'stop' : times < 10 ? 'watch' : 'good',
    because: [
      { says: 'size hardly matters for power, much for noise', link: `${at}.exhaust.muffler` },
      { says: 'rule of ten to twenty swept volumes: from memory, no source' },
    ],
    sources: ['common practice, no source'],
  })
}

/** the level of one outlet is no better known than this, dB */
const levelDoubt = 5

export function levelOf(v: ExhaustView): Finding | undefined {
  const { box, name, air } = v.inputs
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
  const one = outletLevel(run.outFlow, run.rotation, 25, loss)
  const outlets = v.inputs.cylinders * run.engines
  const floor = floorAtOneMetre - 20 * Math.log10(25)
  const level = sumOfLevels([one.outlet + 10 * Math.log10(outlets), floor])
  const limit = passByLimit(run.power, run.engines)
  const over = level - limit
  return finding(v, 'level', {
    says: `${name}${run.engines > 1 ? ', with the others,' : ''} would sound about ${dB(level)} at 25 m at the power peak (${dB(level - levelDoubt)} to ${dB(level + levelDoubt)}), ${Math.abs(over) < 0.5 ? 'just at' : `${Math.abs(over).toFixed(0)} dB ${over > 0 ? 'over' : 'under'}`} the ${limit} dB(A) published for this power.`,
    value: level,
    low: level - levelDoubt,
    high: level + levelDoubt,
    unit: 'dB(A)',
    standing: over > 10 ? 'stop' : over > -3 ? 'watch' : 'good',
    because: [
      {
        says: `the outlet’s pulses alone make ${dB(one.outlet)}; jet noise, shell, intake and hull put a floor of ${dB(floor)} under it that no muffler takes away (common practice, no source)`,
      },
      ...(one.onFloor ? [{ says: 'the floor, not the outlet, sets this figure' }] : []),
      {
        says: `${(run.power / 1000).toFixed(1)} kW, ${run.engines} engine${run.engines > 1 ? 's' : ''}`,
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
