/** How faults of fuel, air and exhaust come about in a simulated session. Authored judgement; what a fault does to the craft stands in hidden.ts. */
import type { EngineState } from './hidden.ts'
import { all, pick, some, type Weighed } from './makers.ts'

/** A lean engine gives less by a parabola over its mixture and stops firing beyond 1.25. */
function lean(e: EngineState, mixture: number): void {
  e.mixture = Math.max(e.mixture, mixture)
  e.torque *= Math.max(0.3, 1 - 1.9 * (mixture - 0.87) ** 2 - (mixture > 1.1 ? 1.4 * (mixture - 1.1) : 0))
  e.heat = Math.max(e.heat, Math.min(1, (mixture - 0.9) * 3))
  if (mixture > 1.27) e.fires = false
}

export const fuelMakers: readonly Weighed[] = [
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
]
