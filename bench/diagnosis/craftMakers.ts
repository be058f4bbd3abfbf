/** How faults of pump, shaft and hull come about in a simulated session. Authored judgement; what a fault does to the craft stands in hidden.ts. */
import { linksOf } from '../../src/whole/faults/linkCauses.ts'
import { pick, type Weighed } from './makers.ts'

export const craftMakers: readonly Weighed[] = [
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
