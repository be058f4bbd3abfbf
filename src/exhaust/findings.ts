/** What the exhaust and the air intake of one engine have to say: silencer, level, pressure, water, air, cautions. */
import type { Because, Finding, Standing } from '../answers/finding.ts'
import { snorkelDrop, snorkelResonance } from './airIntake.ts'
import { chokedFunction, exhaustGas } from './backPressure.ts'
import type { ExhaustInputs } from './fromCraft.ts'
import { floorAtOneMetre, outletLevel, passByLimit, sumOfLevels } from './level.ts'
import { boxLoss, boxVolume } from './muffler.ts'
import { drawnIn, flapOpening, heights, judgeOutlet } from './outlet.ts'
import { hotResistivity, straightThroughLoss } from './packing.ts'

/** How the engine runs at its power peak, by simulation. SI. */
export interface ExhaustRun {
  /** kg/s through one pipe, and air alone into one cylinder */
  massFlow: number
  airFlow: number
  /** K at the exhaust thermometer */
  exhaustT: number
  /** Pa over the air, behind the pipe */
  behind: number
  /** rev/s */
  rotation: number
  /** W of this engine, all its cylinders, and how many engines the craft has */
  power: number
  engines: number
  /** kg/s out of one outlet over one turn, evenly spaced; empty when not known */
  outFlow: readonly number[]
}

export interface ExhaustView {
  inputs: ExhaustInputs
  /** absent when nothing was simulated */
  run?: ExhaustRun
  /** m over still water, lowest lip of the outlet by the craft's own float line */
  lipAfloat?: number
}

const munjal = 'M. L. Munjal, Acoustics of Ducts and Mufflers (2014); NACA Report 1192 (1954)'
const directive = 'Directive 2013/53/EU, Annex I part C; measured by EN ISO 14509'
const inboard =
  'ABYC P-1 and inboard practice, as summarised in the boating press; margins for this size are this project’s own'
const handbook =
  'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996); D. S. Miller, Internal Flow Systems (1978), from memory'

const kPa = (x: number): string => `${(x / 1000).toFixed(1)} kPa`
const cm = (x: number): string => `${(100 * x).toFixed(0)} cm`
const dB = (x: number): string => `${x.toFixed(0)} dB(A)`
const worse = (...s: Standing[]): Standing =>
  s.includes('stop') ? 'stop' : s.includes('watch') ? 'watch' : 'good'

/** K in the muffler box: gas loses about an eighth of its heat over the air on the way there; common practice, no source. */
export function boxTemperature(exhaustT: number, airT: number): number {
  return airT + 0.87 * (exhaustT - airT)
}

/** All findings of one engine's exhaust, in no particular order. */
export function exhaustFindings(v: ExhaustView): Finding[] {
  const out: Finding[] = []
  const add = (...f: (Finding | undefined)[]): void => {
    for (const one of f) if (one) out.push(one)
  }
  add(mufflerOf(v), boxSizeOf(v), pressureOf(v), levelOf(v))
  add(...waterOf(v))
  add(...airOf(v))
  add(cautionOf(v))
  return out
}

function finding(v: ExhaustView, id: string, f: Omit<Finding, 'id' | 'question'>): Finding {
  return { id: `breath.${v.inputs.at}.${id}`, question: 'breath', ...f }
}

/** Loss of the box at the firing note and its weakest place, in gas at box temperature. */
function mufflerOf(v: ExhaustView): Finding | undefined {
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

function boxSizeOf(v: ExhaustView): Finding | undefined {
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

function pressureOf(v: ExhaustView): Finding | undefined {
  const { box, outlet, stinger, name, at, air } = v.inputs
  if (!v.run || !box) return undefined
  const { behind, massFlow, exhaustT } = v.run
  const ratio = (box.outletBore / stinger.bore) ** 2
  const t = boxTemperature(exhaustT, air.t)
  const p = air.p + behind
  const loading =
    (massFlow * Math.sqrt(exhaustGas.gasConstant * t)) / (p * 0.8 * (Math.PI / 4) * box.outletBore ** 2)
  const nearChoke = loading / chokedFunction(exhaustGas.gamma)
  return finding(v, 'back-pressure', {
    says: `${name}: ${kPa(behind)} stand in the box at the power peak, which costs about ${(behind / 1000).toFixed(0)} % of torque.`,
    value: behind,
    unit: 'Pa',
    standing: behind > 20e3 || nearChoke > 0.95 ? 'stop' : behind > 8e3 || ratio < 1.2 ? 'watch' : 'good',
    because: [
      {
        says: `outlet area is ${ratio.toFixed(2)} of the stinger’s; 1.2 or more is usual`,
        link: outlet ? `${at}.exhaust.outlet.bore` : `${at}.exhaust.outlet`,
      },
      { says: `flow at ${(100 * nearChoke).toFixed(0)} % of what the outlet can pass at all` },
      { says: 'about one part in a hundred of torque for each kPa: this project’s own simulation' },
    ],
    sources: [handbook],
  })
}

/** the level of one outlet is no better known than this, dB */
const levelDoubt = 5

function levelOf(v: ExhaustView): Finding | undefined {
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

function waterOf(v: ExhaustView): Finding[] {
  const { outlet, name, at, box, pipeVolume, waterT, waterDensity } = v.inputs
  if (!outlet)
    return [
      finding(v, 'outlet', {
        says: `${name}: how high the exhaust outlet stands over the water is not in the file.`,
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
      says: `the file’s height gives ${cm(byFile)}${outlet.assumed ? ', assumed' : ''}`,
      link: `${at}.exhaust.outlet.height`,
    },
    ...(v.lipAfloat === undefined
      ? []
      : [{ says: `the craft’s own float line gives ${cm(v.lipAfloat)}`, link: 'openings' }]),
  ]
  out.push(
    finding(v, 'outlet', {
      says: `${name}: the lowest lip of the outlet is ${lip < 0 ? `${cm(-lip)} under` : `${cm(lip)} over`} still water; ${cm(heights.lip.warn)} keep splashes out, under ${cm(heights.lip.refuse)} it floods.`,
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
      says: `${name}: the highest place inside the exhaust is ${outlet.highPoint < 0 ? `${cm(-outlet.highPoint)} under` : `${cm(outlet.highPoint)} over`} the water; ${cm(heights.spill.want)} is what inboard boats have, as high as possible is right here.`,
      value: outlet.highPoint,
      unit: 'm',
      standing: judged.spill,
      because: [
        { says: 'past that height water runs to the engine', link: `${at}.exhaust.outlet.high point` },
        outlet.fall === undefined
          ? {
              says: 'the fall to the outlet is not in the file; 2° all the way is wanted',
              link: `${at}.exhaust.outlet.fall`,
            }
          : {
              says: `falls ${((outlet.fall * 180) / Math.PI).toFixed(1)}° to the outlet; 2° is wanted`,
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
      says: `${name}: shut down with the outlet under water, the cooling pipe would draw in up to ${(1000 * volume).toFixed(1)} L${outlet.vent ? ', which the vent at the high point prevents while it is clear' : '; a 3 to 4 mm vent at the high point prevents it'}.`,
      value: volume,
      unit: 'm³',
      standing: outlet.vent ? 'good' : canDip ? (judged.lip === 'stop' ? 'stop' : 'watch') : 'watch',
      because: [
        {
          says: `gas from about ${(hot - 273.15).toFixed(0)} °C to ${(waterT - 273.15).toFixed(0)} °C shrinks by ${(100 * share).toFixed(0)} %`,
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
  if (outlet.flap) out.push(flapOf(v, lip, waterDensity))
  return out
}

/** A flap of rubber sheet over the hole: 1.3 bores across, 1.5 to 3 mm thick, hinged at its top. */
function flapOf(v: ExhaustView, lip: number, density: number): Finding {
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
  const idle = 300
  return finding(v, 'flap', {
    says: `${name}: the flap opens at ${Math.round(low)} to ${Math.round(high)} Pa${high > idle ? `; at idle the box has only about ${idle} Pa, so expect stalling and burbling` : ''}. It is a splash guard, not a seal.`,
    value: 0.5 * (low + high),
    low,
    high,
    unit: 'Pa',
    standing: high > idle ? 'watch' : 'good',
    because: [
      {
        says: 'flap taken as rubber sheet of 1.5 to 3 mm, 1.3 bores across',
        link: `${at}.exhaust.outlet.flap`,
      },
      { says: 'flaps leak, stick open on carbon and fold in reverse flow (common practice, no source)' },
    ],
    sources: ['Hydrostatics', 'common practice, no source'],
  })
}

function airOf(v: ExhaustView): Finding[] {
  const { snorkel: s, name, at, air, cylinders } = v.inputs
  if (!s) return []
  const out: Finding[] = [
    finding(v, 'snorkel-mouth', {
      says: `${name}: the mouth of the air intake is ${s.height < 0 ? `${cm(-s.height)} under` : `${cm(s.height)} over`} still water.`,
      value: s.height,
      unit: 'm',
      standing: s.height < 0.1 ? 'stop' : s.height < 0.25 ? 'watch' : s.heightAssumed ? 'unknown' : 'good',
      because: [
        {
          says: `${s.heightAssumed ? 'assumed' : 'from the file'}; under 25 cm spray goes in, under 10 cm a wake does (common practice, no source)`,
          link: `${at}.snorkel.height`,
        },
        { says: 'a loop or a box with a drain at its foot keeps what runs in from the carburettor' },
      ],
      sources: ['common practice, no source'],
    }),
  ]
  if (!v.run) return out
  const d = snorkelDrop(s, {
    massFlow: v.run.airFlow * cylinders,
    rotation: v.run.rotation,
    cylinders,
    pressure: air.p,
    temperature: air.t,
  })
  const ring =
    s.box > 0 ? snorkelResonance(s.bore, s.length, s.box, Math.sqrt(1.4 * 287.05 * air.t)) : undefined
  const intake = v.run.rotation * cylinders
  const drums = ring !== undefined && Math.abs(ring / intake - 1) < 0.15
  out.push(
    finding(v, 'snorkel', {
      says: `${name}: the air intake costs ${Math.round(d.drop)} Pa at the power peak, about ${(100 * d.deliveryLost).toFixed(1)} % of the charge${drums ? `, and tube and box ring at ${ring!.toFixed(0)} Hz, close to the engine’s own ${intake.toFixed(0)} Hz` : ''}.`,
      value: d.drop,
      unit: 'Pa',
      standing: worse(
        d.deliveryLost > 0.05 ? 'stop' : d.deliveryLost > 0.015 ? 'watch' : 'good',
        drums ? 'watch' : 'good',
      ),
      because: [
        {
          says: `${d.velocity.toFixed(0)} m/s on the mean, gulps count ${d.pulsation.toFixed(1)} times`,
          link: `${at}.snorkel.bore`,
        },
        {
          says:
            s.box > 0
              ? `air box of ${(1000 * s.box).toFixed(1)} L smooths the gulps`
              : 'no air box: one of ten swept volumes smooths the gulps',
          link: `${at}.snorkel.box`,
        },
        { says: 'a change of the intake changes the mixture: look at the plug' },
      ],
      sources: [
        'S. E. Haaland, J. Fluids Eng. 105 (1983) 89; D. S. Miller, Internal Flow Systems (1978), from memory',
      ],
    }),
  )
  return out
}

/** Volume part of carbon monoxide in dry exhaust of a rich engine: 4.6 % at 0.87, 7.2 % at 0.80; equilibrium of iso-octane. */
export function monoxide(lambda: number): number {
  return Math.max(0.002, 0.046 + ((0.072 - 0.046) / (0.8 - 0.87)) * (lambda - 0.87))
}

function cautionOf(v: ExhaustView): Finding {
  const { name, lambda, finish, at } = v.inputs
  return finding(v, 'caution', {
    says: `Cautions for ${name}: its exhaust holds about ${(100 * monoxide(lambda)).toFixed(0)} % carbon monoxide; let the outlet blow aft and away from the rider, worst is running while lying still, and never run it indoors. ${finish === 'water-cooled' ? 'Stinger and cylinder' : 'Pipe, stinger and box'} burn skin, petrol and foam: guard what is over 93 °C within reach and keep 50 mm from foam and fuel.`,
    value: monoxide(lambda),
    unit: '1',
    standing: 'watch',
    because: [
      { says: `excess-air ratio ${lambda.toFixed(2)}`, link: `${at}.mixture.lambda` },
      { says: 'over 1000 parts in a million were common behind boats that lay still with engines running' },
      { says: 'test for leaks: 28 kPa (4 psi) for five minutes, with soap water' },
      { says: 'each engine its own exhaust; no other line led into it' },
      ...(finish === 'water-cooled'
        ? [
            {
              says: 'water goes in behind the stinger only: in the pipe it cools the gas and the tuned speed falls',
              link: `${at}.exhaust.finish`,
            },
          ]
        : []),
    ],
    sources: ['NIOSH reports on carbon monoxide from boats', 'ABYC P-1 as summarised in the boating press'],
  })
}
