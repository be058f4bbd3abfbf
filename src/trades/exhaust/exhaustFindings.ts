/** What the exhaust and the air intake of one engine have to say: silencer, level, pressure, water, air, cautions. */
import {
  inCelsius,
  inCm,
  inCount,
  inFlowSpeed,
  inHertz,
  inKpa,
  inLitres,
  inMm,
  inPercent,
  inTimes,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import { monoxide } from '../../physics/gas/monoxide.ts'
import { snorkelDrop, snorkelResonance } from './airIntake.ts'
import { chokedFunction, exhaustGas } from './backPressure.ts'
import { waterOf } from './backwaterFindings.ts'
import { type ExhaustLimits, exhaustLimits } from './exhaustLimits.ts'
import { boxTemperature, type ExhaustView, finding, overWater, worse } from './exhaustView.ts'
import { boxSizeOf, levelOf, mufflerOf } from './noiseFindings.ts'

const handbook =
  'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996); D. S. Miller, Internal Flow Systems (1978), from memory'

/** All findings of one engine's exhaust, in no particular order. */
export function exhaustFindings(v: ExhaustView, limits: ExhaustLimits = exhaustLimits): Finding[] {
  const out: Finding[] = []
  const add = (...f: (Finding | undefined)[]): void => {
    for (const one of f) if (one) out.push(one)
  }
  // what several engines share is told once, with the engine it is written under
  if (v.inputs.pipes > 0) {
    add(mufflerOf(v, limits), boxSizeOf(v, limits), pressureOf(v, limits), levelOf(v, limits))
    add(...waterOf(v, limits))
  }
  if (v.inputs.intakes > 0) add(...airOf(v, limits))
  add(cautionOf(v))
  return out
}

function pressureOf(v: ExhaustView, limits: ExhaustLimits): Finding | undefined {
  const { box, outlet, stinger, boxName: name, at, air, pipes } = v.inputs
  if (!v.run || !box) return undefined
  const { behind, exhaustT } = v.run
  const massFlow = v.run.massFlow * pipes
  const ratio = (box.outletBore / stinger.bore) ** 2
  const t = boxTemperature(exhaustT, air.t)
  const p = air.p + behind
  const loading =
    (massFlow * Math.sqrt(exhaustGas.gasConstant * t)) / (p * 0.8 * (Math.PI / 4) * box.outletBore ** 2)
  const nearChoke = loading / chokedFunction(exhaustGas.gamma)
  const least = limits.outletOfStinger.value
  const standing =
    behind > limits.behindStop.value || nearChoke > limits.nearChoke.value
      ? 'stop'
      : behind > limits.behindWatch.value || ratio < least
        ? 'watch'
        : 'good'
  return finding(v, 'back-pressure', {
    says: say`${name}: ${inKpa(behind, 0.1)} stand in the box at the power peak, which costs about ${inPercent(behind / 1e5)} of torque.`,
    ...(standing === 'good'
      ? {}
      : { act: say`an outlet of ${inTimes(Math.max(ratio * 1.2, least), 0.1)} times the stinger’s area` }),
    value: behind,
    unit: 'Pa',
    standing,
    because: [
      {
        says: say`outlet area is ${inTimes(ratio)} of the stinger’s; ${inTimes(least, 0.1)} or more is usual`,
        link: outlet ? `${at}.exhaust.outlet.bore` : `${at}.exhaust.outlet`,
      },
      ...(pipes > 1
        ? [
            {
              says: say`${inCount(pipes)} pipes blow into it together; with one engine dead, gas of the other stands in its pipe`,
              link: `${at}.exhaust.muffler`,
            },
          ]
        : []),
      { says: say`flow at ${inPercent(nearChoke)} of what the outlet can pass at all` },
      { says: say`about ${inPercent(0.01)} of torque for each ${inKpa(1e3)}: this project’s own simulation` },
    ],
    sources: [handbook],
  })
}

function airOf(v: ExhaustView, limits: ExhaustLimits): Finding[] {
  const { snorkel: s, airName: name, at, air, intakes } = v.inputs
  const cylinders = v.inputs.cylinders * intakes
  if (!s) return []
  const [wake, spray] = [limits.mouthWake.value, limits.mouthSpray.value]
  const out: Finding[] = [
    finding(v, 'snorkel-mouth', {
      says: say`${name}: the mouth of the air intake is ${overWater(s.height)} still water.`,
      ...(s.height < spray ? { act: say`raise it to ${inCm(spray)} or more` } : {}),
      harm: 'before the water',
      value: s.height,
      unit: 'm',
      standing: s.height < wake ? 'stop' : s.height < spray ? 'watch' : s.heightAssumed ? 'unknown' : 'good',
      because: [
        {
          says: say`${s.heightAssumed ? 'assumed' : 'from the file'}; under ${inCm(spray)} spray goes in, under ${inCm(wake)} a wake does (common practice, no source)`,
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
  const drums = ring !== undefined && Math.abs(ring / intake - 1) < limits.ringNear.value
  out.push(
    finding(v, 'snorkel', {
      says: say`${name}: the air intake costs ${inKpa(d.drop, 0.01)} at the power peak, about ${inPercent(d.deliveryLost, 0.1)} of the charge${
        drums
          ? say`, and tube and box ring at ${inHertz(ring)}, close to the engine’s own ${inHertz(intake)}`
          : ''
      }.`,
      ...(d.deliveryLost > limits.chargeWatch.value
        ? { act: say`a tube wider than ${inMm(s.bore)}, or shorter than ${inCm(s.length)}` }
        : drums
          ? { act: 'another length of tube or size of box moves its ring off the engine’s note' }
          : {}),
      value: d.drop,
      unit: 'Pa',
      standing: worse(
        d.deliveryLost > limits.chargeStop.value
          ? 'stop'
          : d.deliveryLost > limits.chargeWatch.value
            ? 'watch'
            : 'good',
        drums ? 'watch' : 'good',
      ),
      because: [
        {
          says: say`${inFlowSpeed(d.velocity, 1)} on the mean, gulps count ${inTimes(d.pulsation, 0.1)} times`,
          link: `${at}.snorkel.bore`,
        },
        {
          says:
            s.box > 0
              ? say`air box of ${inLitres(s.box)} smooths the gulps`
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

function cautionOf(v: ExhaustView): Finding {
  const { name, lambda, finish, at } = v.inputs
  return finding(v, 'caution', {
    says: say`Cautions for ${name}: its exhaust holds about ${inPercent(monoxide(lambda))} carbon monoxide; let the outlet blow aft and away from the rider, worst is running while lying still, and never run it indoors. ${finish === 'water-cooled' ? 'Stinger and cylinder' : 'Pipe, stinger and box'} burn skin, petrol and foam: guard what is over ${inCelsius(366.15)} within reach and keep ${inMm(0.05)} from foam and fuel.`,
    value: monoxide(lambda),
    unit: '1',
    // a caution always stands; it is no finding to act on
    standing: 'good',
    because: [
      { says: say`excess-air ratio ${inTimes(lambda)}`, link: `${at}.mixture.lambda` },
      { says: 'over 1000 parts in a million were common behind boats that lay still with engines running' },
      { says: say`test for leaks: ${inKpa(28e3)} for five minutes, with soap water` },
      ...(v.inputs.pipes === 1
        ? [{ says: 'each engine its own exhaust; no other line led into it' }]
        : [
            {
              says: 'an exhaust that engines share lets gas and water of one reach the other: look into the pipe of one that stood still',
              link: `${at}.exhaust.leads into`,
            },
          ]),
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
