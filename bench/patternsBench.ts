/** Speed of flat patterns: each kind, a whole exhaust with its proof, and forty pieces nested, against one plain cone. */

import { dxfText } from '../src/drawing/dxf.ts'
import { flatSheet } from '../src/drawing/flatSheet.ts'
import { tiled } from '../src/drawing/tiles.ts'
import { developCone } from '../src/shapes/cone.ts'
import { developElbow } from '../src/shapes/elbow.ts'
import { nest } from '../src/shapes/nest.ts'
import { developOblique } from '../src/shapes/obliqueCone.ts'
import { jointGap, proveFold } from '../src/shapes/refold.ts'
import { developSaddle } from '../src/shapes/saddle.ts'
import { tight } from '../src/shapes/seam.ts'
import { developSquareToRound } from '../src/shapes/squareToRound.ts'
import { best, line } from './best.ts'

const sheeting = { id: 'b', title: 'Bench', thickness: 1e-3, seam: tight }
const shape = { startRadius: 0.05, endRadius: 0.02, height: 0.25 }
const elbow = { startRadius: 0.03, endRadius: 0.02, bendRadius: 0.09, turn: Math.PI / 2, joints: 4 }

const cone = best(() => void developCone(shape, sheeting))
const timed = (name: string, run: () => void, rounds = 15) => line(name, best(run, rounds), cone, 'a cone')
line('a cone', cone, cone, 'itself')
timed('an elbow of five pieces through a cone', () => void developElbow(elbow, sheeting))
timed(
  'an oblique cone',
  () => void developOblique({ baseRadius: 0.05, topRadius: 0.03, height: 0.1, offset: 0.03 }, sheeting),
)
timed(
  'a rectangle to a circle',
  () =>
    void developSquareToRound(
      { length: 0.1, width: 0.08, radius: 0.03, height: 0.08, offsetX: 0, offsetY: 0 },
      sheeting,
    ),
)
timed(
  'a saddle',
  () =>
    void developSaddle(
      { branchRadius: 0.02, headerRadius: 0.03, angle: 1, offset: 0, length: 0.2 },
      sheeting,
    ),
)
/** header and belly bent, three diffuser cones, a belly, a baffle, a stinger */
const exhaust = () => [
  ...developElbow(elbow, sheeting).pieces,
  ...[0.02, 0.025, 0.035].map((r) =>
    developCone({ startRadius: r, endRadius: r + 0.01, height: 0.1 }, sheeting),
  ),
  ...developElbow({ ...elbow, startRadius: 0.045, endRadius: 0.045, bendRadius: 0.15 }, sheeting).pieces,
  developCone({ startRadius: 0.045, endRadius: 0.012, height: 0.15 }, sheeting),
  developCone({ startRadius: 0.012, endRadius: 0.012, height: 0.2 }, sheeting),
]
timed('a whole exhaust of fifteen patterns', () => void exhaust())
const parts = exhaust()
timed('its proof by folding', () => {
  for (const p of parts) proveFold(p.strips[0]!)
})
timed(
  'a joint of two folded pieces measured',
  () => void jointGap(parts[0]!.strips[0]!, 'far', parts[1]!.strips[0]!, 'near'),
)
const many = parts.map((p) => ({ ...p.piece, count: 3 })).slice(0, 14)
const stock = { id: 's', width: 2, height: 1, thickness: 1e-3, count: 0, toBuy: true }
timed(
  `${many.length * 3} pieces nested on sheets of 2 m by 1 m`,
  () => void nest(many, [stock], { kerf: 1e-3, gap: 3e-3, edge: 5e-3 }),
  5,
)
const drawing = flatSheet(
  parts.map(({ piece }, i) => ({ piece, laid: ([x, y]) => [x + 0.3 * i, y] })),
  'Exhaust',
)
timed('all of it tiled over A4', () => void tiled(drawing, { paper: 'A4' }), 5)
timed(
  'all of it as a cutting file',
  () => {
    for (const _ of dxfText(parts.map(({ piece }) => ({ piece }))));
  },
  5,
)
