/** The throttle cable, what stops the engines, and wires near fuel. */
import {
  inCount,
  inDegrees,
  inMetres,
  inMm,
  inNewtons,
  inPercent,
  inTimes,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { ControlsInputs } from './controlsFromCraft.ts'
import type { ControlsLimits } from './controlsLimits.ts'
import { finding } from './pullFindings.ts'
import { type CableAnswer, cableFriction, cablePull } from './throttleCable.ts'

type Cable = NonNullable<Craft['cable']>

const capstan = 'Capstan rule e^{μθ}; friction of cables: common practice, no source'

export function cableFindings(inputs: ControlsInputs, limits: ControlsLimits): Finding[] {
  const { cable } = inputs.craft
  if (!cable) return []
  const answer = cablePull({
    bends: cable.bends.value,
    friction: cableFriction[cable.liner],
    spring: cable.spring.value,
    lever: cable.lever.value,
    ratio: cable.leverRatio.value,
  })
  return [
    back(cable, answer, limits),
    finger(cable, answer, limits),
    led(cable, limits),
    slack(cable, limits),
    ...through(inputs, cable, limits),
    kill(inputs, cable, limits),
    ...wiring(cable),
  ]
}

const newtonsUp = (F: number) => Math.ceil(F - 1e-9)

function back(cable: Cable, a: CableAnswer, limits: ControlsLimits): Finding {
  const bad = a.back < limits.cableBack.value
  const wants = newtonsUp((cable.spring.value * limits.cableBack.value) / a.back)
  const stuck = a.back < 1
  return finding('return', {
    says: stuck
      ? 'The throttle stays open when it is let go: its spring does not bring the lever back through the cable.'
      : say`Let go, the throttle shuts: its spring brings ${inTimes(a.back, 0.1)} times what the lever takes.`,
    ...(bad
      ? {
          act: say`a return spring of ${inNewtons(wants)} instead of ${inNewtons(cable.spring.value)}, or straighter bends`,
          changes: [
            {
              path: 'cable.spring',
              from: cable.spring.text ?? `${Math.round(10 * cable.spring.value) / 10} N`,
              to: `${wants} N`,
            },
          ],
        }
      : {}),
    harm: 'before the water',
    value: a.back,
    unit: '1',
    standing: stuck ? 'stop' : bad ? 'watch' : 'good',
    because: [
      {
        says: say`bends of ${inDegrees(cable.bends.value, 5)} cost ${inTimes(a.times)} times in each direction`,
        link: 'cable.bends',
      },
      { says: say`spring ${inNewtons(cable.spring.value)} at the carburettor`, link: 'cable.spring' },
      { says: 'test: from full, let go; it is at idle before one can say so, wet and sandy too' },
    ],
    measureNext: {
      what: 'hook a luggage scale to the cable’s end at the carburettor',
      with: 'luggage scale',
      minutes: 4,
      path: 'cable.spring',
    },
    sources: [capstan],
  })
}

function finger(cable: Cable, a: CableAnswer, limits: ControlsLimits): Finding {
  const bad = a.finger > limits.finger.value
  return finding('finger', {
    says: say`The finger holds ${inNewtons(a.finger)} at the throttle.`,
    ...(bad
      ? {
          act: say`a lever of ${inTimes((cable.leverRatio.value * a.finger) / limits.finger.value, 0.1)} to one instead of ${inTimes(cable.leverRatio.value, 0.1)}`,
        }
      : {}),
    harm: 'comfort',
    value: a.finger,
    unit: 'N',
    standing: bad ? 'watch' : 'good',
    because: [{ says: say`lever ${inTimes(cable.leverRatio.value, 0.1)} to one`, link: 'cable.lever ratio' }],
    sources: [capstan],
  })
}

function led(cable: Cable, limits: ControlsLimits): Finding {
  const much = cable.bends.value > limits.cableBends.value
  const tight = cable.radius.value < limits.cableRadius.value
  return finding('cable-bends', {
    says: say`The throttle cable turns through ${inDegrees(cable.bends.value, 5)} in all, round ${inMm(cable.radius.value)} at its tightest.`,
    ...(tight
      ? { act: say`no bend tighter than ${inMm(limits.cableRadius.value)}` }
      : much
        ? { act: say`a way with no more than ${inDegrees(limits.cableBends.value, 5)} of bends` }
        : {}),
    harm: 'will stop the run',
    value: cable.bends.value,
    unit: 'rad',
    standing: much || tight ? 'watch' : 'good',
    because: [
      {
        says: say`up to ${inDegrees(limits.cableBends.value, 5)} and no tighter than ${inMm(limits.cableRadius.value)} is usual`,
        link: 'cable.radius',
      },
    ],
    sources: ['Common practice, no source'],
  })
}

function slack(cable: Cable, limits: ControlsLimits): Finding {
  const free = cable.freeTravel.value
  const least = limits.slackLeast.value
  const most = limits.slackMost.value
  const off = free < least ? 'little' : free > most ? 'much' : undefined
  return finding('free-travel', {
    says: say`The inner moves ${inMm(free, 0.1)} before the throttle does.`,
    ...(off ? { act: say`set it to ${inMm(0.5 * (least + most), 0.1)} with the adjuster` } : {}),
    harm: off === 'little' ? 'before the water' : 'costs speed',
    value: free,
    unit: 'm',
    standing: off ? 'watch' : 'good',
    because: [
      {
        says: 'too little, and a turned handle opens the throttle; too much, and it never opens wholly',
        link: 'cable.free travel',
      },
    ],
    sources: ['Common practice, no source'],
  })
}

/** Where the cable goes through the deck. */
function through({ tube }: ControlsInputs, cable: Cable, limits: ControlsLimits): Finding[] {
  if (cable.through === 'open hole')
    return [
      finding('through', {
        says: 'The throttle cable goes through the deck in a bare hole: water follows it.',
        act: say`a gland for ${inMm(cable.thickness.value, 0.1)} of cable`,
        harm: 'before the water',
        standing: 'watch',
        because: [{ says: 'an open hole', link: 'cable.through' }],
        sources: ['Common practice, no source'],
      }),
    ]
  if (cable.through === 'gland' || tube === undefined) return []
  const part = (cable.thickness.value / tube) ** 2
  const bad = part > limits.tube.value
  return [
    finding('through', {
      says: say`The throttle cable lies in the air tube and takes ${inPercent(part, 0.1)} of its bore.`,
      ...(bad
        ? {
            act: say`a gland of its own for ${inMm(cable.thickness.value, 0.1)} of cable, or a tube of ${inMm(mmUp(cable.thickness.value / Math.sqrt(limits.tube.value)))}`,
          }
        : {}),
      harm: 'costs speed',
      value: part,
      unit: '1',
      standing: bad ? 'watch' : 'good',
      because: [{ says: say`a tube of ${inMm(tube)}`, link: 'cable.through' }],
      sources: ['Areas of the two circles'],
    }),
  ]
}

const mmUp = (m: number) => 1e-3 * Math.ceil(1e3 * m - 1e-9)

function kill({ craft }: ControlsInputs, cable: Cable, limits: ControlsLimits): Finding {
  const count = craft.engines.length
  const base = {
    harm: 'before the water' as const,
    sources: ['46 USC 4312 (cut-off switch and link), from memory; common practice'],
  }
  if (cable.kill === undefined)
    return finding('kill', {
      ...base,
      says: 'Whether a kill cord stops the engines is not known: the file does not say.',
      standing: 'unknown',
      because: [{ says: 'no kill cord in the file', link: 'cable.kill' }],
      measureNext: {
        what: 'pull the lanyard off while it idles and listen whether every engine dies',
        with: 'ear',
        minutes: 2,
        path: 'cable.kill',
      },
    })
  const grounds =
    'a magneto is stopped by grounding its coil: a broken wire cannot stop it, so try it at each start'
  if (cable.kill === 'none' || (cable.kill === 'one engine' && count > 1))
    return finding('kill', {
      ...base,
      says:
        cable.kill === 'none'
          ? 'Nothing stops the engines when the rider falls off: there is no kill cord.'
          : say`The kill cord stops one of ${inCount(count)} engines: the craft drives on without its rider.`,
      act:
        count > 1
          ? say`one lanyard switch that grounds the coils of all ${inCount(count)} engines, a diode in each lead`
          : say`a lanyard switch that grounds the coil, on a cord of ${inMetres(limits.lanyard.value, 0.1)}`,
      changes: [{ path: 'cable.kill', from: cable.kill, to: 'all engines' }],
      standing: 'stop',
      because: [{ says: cable.kill, link: 'cable.kill' }, { says: grounds }],
    })
  const long = cable.lanyard.value > limits.lanyard.value
  return finding('kill', {
    ...base,
    says: say`One kill cord of ${inMetres(cable.lanyard.value, 0.1)} stops ${count > 1 ? say`all ${inCount(count)} engines` : 'the engine'}.`,
    ...(long
      ? {
          act: say`a lanyard of ${inMetres(limits.lanyard.value, 0.1)}`,
          changes: [
            {
              path: 'cable.lanyard',
              from: cable.lanyard.text ?? `${cable.lanyard.value} m`,
              to: `${limits.lanyard.value} m`,
            },
          ],
        }
      : {}),
    standing: long ? 'watch' : 'good',
    because: [{ says: cable.kill, link: 'cable.kill' }, { says: grounds }],
  })
}

function wiring(cable: Cable): Finding[] {
  if (cable.wiring === undefined) return []
  const open = cable.wiring === 'open'
  return [
    finding('wiring', {
      says: open
        ? 'Open switches, relays or joints stand in the space with petrol.'
        : cable.wiring === 'sealed'
          ? 'What switches in the space with petrol is sealed against sparks.'
          : 'No switch, relay or joint stands in the space with petrol.',
      ...(open
        ? { act: say`sealed switches and relays, or all of them ${inMetres(0.6, 0.1)} off, outside the bay` }
        : {}),
      harm: 'before the water',
      standing: open ? 'watch' : 'good',
      because: [{ says: 'one spark is enough where vapour lies', link: 'cable.wiring' }],
      sources: ['SAE J1171 and ISO 8846 (ignition protection), from memory'],
    }),
  ]
}
