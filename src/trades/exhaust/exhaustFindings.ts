/** What the exhaust and the air intake of one engine have to say: silencer, level, pressure, water, air, cautions. */
import type { Finding } from '../../base/answers/finding.ts'
import { snorkelDrop, snorkelResonance } from './airIntake.ts'
import { chokedFunction, exhaustGas } from './backPressure.ts'
import { boxTemperature, cm, type ExhaustView, finding, kPa, worse } from './exhaustView.ts'
import { boxSizeOf, levelOf, mufflerOf } from './noiseFindings.ts'
import { waterOf } from './waterFindings.ts'

const handbook =
  'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996); D. S. Miller, Internal Flow Systems (1978), from memory'

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
