/** How each fault of a simulated session comes about: authored judgement; what a fault does to the craft stands in hidden.ts. */
import type { Random } from '../../src/base/numerics/random.ts'
import type { Craft } from '../../src/craft/index.ts'
import { linksOf } from '../../src/whole/faults/linkCauses.ts'
import type { EngineState, Fault, Hidden } from './hidden.ts'

type Maker = (rng: Random, craft: Craft) => Fault | undefined

const pick = <T>(rng: Random, list: readonly (readonly [number, T])[]): T => {
  let u = rng.next() * list.reduce((a, [w]) => a + w, 0)
  for (const [w, x] of list) {
    u -= w
    if (u <= 0) return x
  }
  return list.at(-1)![1]
}
const some = (rng: Random, h: Hidden) =>
  h.engines[Math.min(h.engines.length - 1, Math.floor(rng.next() * h.engines.length))]!
const all = (h: Hidden, f: (e: EngineState) => void) => h.engines.forEach(f)

/** A lean engine gives less by a parabola over its mixture and stops firing beyond 1.25. */
export function lean(e: EngineState, mixture: number): void {
  e.mixture = Math.max(e.mixture, mixture)
  e.torque *= Math.max(0.3, 1 - 1.9 * (mixture - 0.87) ** 2 - (mixture > 1.1 ? 1.4 * (mixture - 1.1) : 0))
  e.heat = Math.max(e.heat, Math.min(1, (mixture - 0.9) * 3))
  if (mixture > 1.27) e.fires = false
}

/** Weight and maker of every fault a session may have. */
export const makers: readonly (readonly [number, Maker])[] = [
  [
    5,
    (rng) => {
      const how = pick(rng, [
        [5, 'rings'],
        [2, 'seal'],
        [2, 'reed'],
        [1, 'head'],
      ])
      const t = rng.between(0.6, 0.87)
      return {
        cause: 'weak-engine',
        begins: pick(rng, [
          [8, 'from the start'],
          [2, 'when hot'],
        ]),
        apply: (h) => {
          const e = some(rng, h)
          e.torque *= t
          if (how === 'seal') {
            e.leak = true
            e.mixture = 1.02
          } else e.compression = how === 'reed' ? 0.8 : rng.between(0.3, 0.7)
        },
      }
    },
  ],
  [
    6,
    (rng, craft) =>
      craft.engines.length < 2
        ? undefined
        : {
            cause: 'one-dead',
            begins: pick(rng, [
              [5, 'from the start'],
              [4, 'suddenly'],
              [1, 'in turns'],
            ]),
            log: rng.next() < 0.3 ? 'New kill switch lead soldered in.' : undefined,
            apply: (h) => {
              const e = some(rng, h)
              e.fires = false
              e.missed = rng.next() < 0.8 ? 1 : 0.3
              e.mixture = 0.75
            },
          },
  ],
  [
    7,
    (rng, craft) => {
      const one = craft.engines.length < 2 || rng.next() < 0.6
      const mix = rng.between(1.02, 1.32)
      const filed = rng.next()
      return {
        cause: 'lean',
        begins: pick(rng, [
          [5, 'from the start'],
          [2, 'after a minute or two'],
          [1, 'when hot'],
          [1, 'in turns'],
        ]),
        log: !one && filed < 0.6 ? 'Drilled the tank for a new outlet, no filter yet.' : undefined,
        common: one ? undefined : true,
        apply: (h) => {
          if (one) {
            lean(some(rng, h), mix)
            h.jets = 'one short'
          } else {
            h.jets = 'both short'
            all(h, (e) => lean(e, mix * rng.between(0.94, 1.04)))
          }
        },
      }
    },
  ],
  [
    3,
    (rng) => ({
      cause: 'lean',
      begins: pick(rng, [
        [4, 'from the start'],
        [3, 'after a minute or two'],
        [2, 'in turns'],
      ]),
      log: rng.next() < 0.4 ? 'New fuel hose fitted.' : undefined,
      common: true,
      apply: (h) => {
        const mix = rng.between(1.02, 1.25)
        h.line = pick(rng, [
          [3, 'bubbles'],
          [2, 'empty'],
          [3, 'full'],
        ])
        h.jets = 'both short'
        all(h, (e) => lean(e, mix))
      },
    }),
  ],
  [
    3,
    (rng) => ({
      cause: 'lean',
      begins: 'from the start',
      log: rng.next() < 0.4 ? 'Carburettor off and on again, new gasket.' : undefined,
      apply: (h) => {
        const e = some(rng, h)
        lean(e, rng.between(1.02, 1.2))
        e.leak = true
      },
    }),
  ],
  [
    6,
    (rng) => ({
      cause: 'rich',
      begins: 'from the start',
      log: rng.next() < 0.3 ? 'Carburettor jet changed for a larger one.' : undefined,
      apply: (h) => {
        const m = rng.between(0.6, 0.74)
        const list = rng.next() < 0.6 ? h.engines : [some(rng, h)]
        for (const e of list) {
          e.mixture = m
          e.torque *= rng.between(0.72, 0.93)
          e.heat = 0
        }
      },
    }),
  ],
  [
    2,
    (rng) => ({
      cause: 'wrong-mix',
      begins: 'from the start',
      log: rng.next() < 0.4 ? 'Mixed new fuel from the old can.' : undefined,
      common: true,
      apply: (h) => {
        h.mixed = false
        const oil = rng.next() < 0.6 ? 1 : 0
        all(h, (e) => {
          e.torque *= rng.between(0.85, 0.97)
          e.oil = oil
          if (!oil) e.heat = 0.5
        })
      },
    }),
  ],
  [
    5,
    (rng) => ({
      cause: 'wet-exhaust',
      begins: pick(rng, [
        [4, 'from the start'],
        [2, 'after a minute or two'],
        [2, 'in turns'],
        [1, 'suddenly'],
      ]),
      apply: (h) => {
        const e = some(rng, h)
        e.wetPipe = rng.between(0.5, 1)
        e.torque *= 1 - 0.5 * e.wetPipe
        e.wetPlug = rng.next() < 0.5 ? 0.6 : 0.2
      },
    }),
  ],
  [
    6,
    (rng) => ({
      cause: 'mistuned',
      begins: 'from the start',
      log: rng.next() < 0.4 ? 'New exhaust pipes welded.' : undefined,
      apply: (h) => {
        const r = rng.between(0.82, 0.95)
        h.stepped = rng.next() < 0.8
        all(h, (e) => {
          e.rotation *= r
        })
      },
    }),
  ],
  [
    3,
    (rng) => ({
      cause: 'air-blocked',
      begins: pick(rng, [
        [6, 'from the start'],
        [2, 'in turns'],
        [1, 'suddenly'],
      ]),
      apply: (h) => {
        h.filter = rng.next() < 0.2
        all(h, (e) => {
          e.choked = rng.between(0.4, 0.9)
          e.mixture = 0.7
          e.torque *= 1 - 0.45 * e.choked
        })
      },
    }),
  ],
  [
    4,
    (rng) => ({
      cause: 'vent',
      begins: 'after a minute or two',
      log: rng.next() < 0.3 ? 'New tank cap.' : undefined,
      common: true,
      apply: (h) => {
        h.ventShut = true
        const m = rng.between(1.05, 1.25)
        all(h, (e) => lean(e, m))
      },
    }),
  ],
  [
    5,
    (rng) => ({
      cause: 'ignition',
      begins: pick(rng, [
        [2, 'from the start'],
        [4, 'when hot'],
        [3, 'in turns'],
        [1, 'suddenly'],
      ]),
      apply: (h) => {
        const e = some(rng, h)
        e.missed = rng.between(0.12, 0.45)
        e.torque *= 1 - e.missed
      },
    }),
  ],
  [
    1.5,
    (rng) => ({
      cause: 'dunked',
      begins: pick(rng, [
        [1, 'from the start'],
        [2, 'suddenly'],
      ]),
      log: rng.next() < 0.6 ? 'It went under at the landing.' : undefined,
      common: true,
      apply: (h) => {
        h.went = true
        h.bilge = rng.between(0.3, 1)
        h.filter = false
        all(h, (e) => {
          e.wetPlug = 0.9
          e.missed = rng.between(0.1, 0.4)
          e.torque *= rng.between(0.5, 0.85)
        })
      },
    }),
  ],
  [
    2.5,
    (rng) => ({
      cause: 'overheated',
      begins: 'when hot',
      common: true,
      apply: (h) =>
        all(h, (e) => {
          e.heat = 1
          e.torque *= rng.between(0.75, 0.92)
        }),
    }),
  ],
  [
    2,
    (rng) => ({
      cause: 'seized',
      begins: 'suddenly',
      apply: (h) => {
        const e = some(rng, h)
        e.fires = false
        e.locked = rng.next() < 0.75
        e.heat = 1
        e.mixture = 1.1
      },
    }),
  ],
  [
    3,
    (rng) => ({
      cause: 'throttle-short',
      begins: 'from the start',
      log: rng.next() < 0.4 ? 'New throttle cable set.' : undefined,
      apply: (h) => {
        const e = some(rng, h)
        e.shut = true
        h.lever = false
        e.torque *= rng.between(0.72, 0.93)
      },
    }),
  ],
  [5, () => ({ cause: 'as-designed', begins: 'from the start', apply: () => {} })],
  [
    7,
    (rng) => ({
      cause: 'steep',
      begins: 'from the start',
      log: rng.next() < 0.5 ? 'New impeller printed and fitted.' : undefined,
      apply: (h) => {
        h.load *= rng.between(1.22, 1.8)
        h.thrust *= rng.between(1.08, 1.35)
        h.pitch = 1
      },
    }),
  ],
  [
    3,
    (rng) => ({
      cause: 'shallow',
      begins: 'from the start',
      log: rng.next() < 0.5 ? 'New impeller printed and fitted.' : undefined,
      apply: (h) => {
        h.load *= rng.between(0.6, 0.85)
        h.thrust *= rng.between(0.65, 0.85)
        h.pitch = -1
      },
    }),
  ],
  [
    9,
    (rng) => ({
      cause: 'ventilating',
      begins: pick(rng, [
        [4, 'from the start'],
        [5, 'in turns'],
      ]),
      apply: (h) => {
        h.air = rng.between(0.3, 1)
        h.load *= 1 - 0.5 * h.air
        h.thrust *= 1 - 0.65 * h.air
        if (rng.next() < 0.65) h.trim = 1
      },
    }),
  ],
  [
    2,
    (rng) => ({
      cause: 'cavitating',
      begins: 'from the start',
      apply: (h) => {
        h.gravel = true
        h.load *= rng.between(0.85, 0.96)
        h.thrust *= rng.between(0.6, 0.85)
      },
    }),
  ],
  [
    5,
    (rng) => ({
      cause: 'wide-gap',
      begins: 'from the start',
      apply: (h) => {
        h.gap = true
        h.thrust *= rng.between(0.6, 0.87)
        h.load *= rng.between(0.87, 0.96)
      },
    }),
  ],
  [
    4,
    (rng) => ({
      cause: 'nozzle',
      begins: 'from the start',
      log: rng.next() < 0.5 ? 'New nozzle printed.' : undefined,
      apply: (h) => {
        h.bore = true
        h.thrust *= rng.between(0.68, 0.9)
      },
    }),
  ],
  [
    8,
    (rng) => ({
      cause: 'hull',
      begins: pick(rng, [
        [6, 'from the start'],
        [1, 'after a minute or two'],
        [1, 'suddenly'],
      ]),
      apply: (h) => {
        h.drag *= rng.between(1.25, 2.4)
        const how = pick(rng, [
          [4, 'rider'],
          [3, 'water'],
          [2, 'heavy'],
          [1, 'held'],
        ])
        if (how === 'rider') h.trim = rng.next() < 0.5 ? 1 : -1
        else if (how === 'water') {
          h.bilge = rng.between(0.4, 1)
          h.heavy = true
        } else h.heavy = true
      },
    }),
  ],
  [
    6,
    (rng) => ({
      cause: 'weed',
      begins: pick(rng, [
        [2, 'from the start'],
        [4, 'after a minute or two'],
        [3, 'in turns'],
        [1, 'suddenly'],
      ]),
      log: rng.next() < 0.3 ? 'Crossed the shallow end with the weed.' : undefined,
      apply: (h) => {
        h.weed = rng.between(0.3, 1)
        h.load *= 1 - 0.28 * h.weed
        h.thrust *= 1 - 0.55 * h.weed
      },
    }),
  ],
  [
    7,
    (rng, craft) => {
      const links = linksOf(craft)
      const l = links[Math.floor(rng.next() * links.length)]!
      const how = pick(rng, [
        [4, 'slips'],
        [4, 'bolts'],
        [2, 'broken'],
      ])
      return {
        cause: `coupling:${l.path}`,
        begins:
          how === 'slips'
            ? pick(rng, [
                [4, 'when hot'],
                [3, 'from the start'],
                [1, 'in turns'],
              ])
            : 'suddenly',
        log: rng.next() < 0.4 ? 'Couplings bolted up hand-tight.' : undefined,
        apply: (h) => {
          if (how === 'slips') {
            h.slips = rng.between(0.3, 0.8)
            h.load *= 1 - 0.65 * h.slips
            h.thrust *= 1 - 0.85 * h.slips
            h.coupling = 'slipped marks'
          } else {
            h.open = l.before
            h.coupling = how === 'bolts' ? 'bolts out' : 'broken'
          }
        },
      }
    },
  ],
]

/** Faults of a session: one in six has two, one in twelve three. */
export function drawFaults(rng: Random, craft: Craft): Fault[] {
  const u = rng.next()
  const count = u < 1 / 12 ? 3 : u < 1 / 12 + 1 / 6 ? 2 : 1
  const out: Fault[] = []
  for (let tries = 0; out.length < count && tries < 50; tries++) {
    const f = pick(rng, makers)(rng, craft)
    if (!f || out.some((o) => o.cause === f.cause)) continue
    if ((count > 1 && f.cause === 'as-designed') || (out.length > 0 && f.cause === 'as-designed')) continue
    out.push(f)
  }
  return out
}
