/** How faults of what fires and turns come about in a simulated session. Authored judgement; what a fault does to the craft stands in hidden.ts. */
import { all, pick, some, type Weighed } from './makers.ts'

export const engineMakers: readonly Weighed[] = [
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
]
