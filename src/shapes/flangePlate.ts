/**
 * Flanges, gaskets and the outlet's flange with a seat for its flap. Edge distance of a bolt hole: 1.5 diameters from its middle, common practice;
 * the seat is a ring round the bore on which the flap lies.
 */
import { inMm } from '../base/answers/amounts.ts'
import type { FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { circle, hullOf } from './outlines.ts'
import { line } from './patternMarks.ts'
import { plate } from './plate.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'

export interface FlangeShape {
  id: string
  title: string
  thickness: number
  count?: number
  /** of the hole in the middle, m */
  bore: number
  /** circle of the bolts' middles, m, and the bolts' own diameter */
  boltCircle: number
  bolts: number
  bolt: number
  /** play of the bolts in their holes on diameter, m */
  play: number
  /** width of metal left round bore and bolt holes, m */
  land: number
  /** a flap that closes the bore: width of its seat, m; its hinge's screws, m apart, so far above the middle */
  flap?: { seat: number; hinge: number; apart: number; screw: number }
}

const mustFit = (field: string, value: number, least: number, what: string): void => {
  if (value >= least) return
  throw new ShapeFault(
    field,
    value,
    least,
    say`${what}: ${inMm(value, 0.1)} where it takes ${inMm(least, 0.1)}.`,
    say`Give ${field} at least ${inMm(least, 0.1)}.`,
  )
}

/** Pattern of a flange. ShapeFault naming bore, boltCircle, bolts, bolt, land or flap. */
export function flangePlate(f: FlangeShape): FlatPiece {
  mustLie('bore', f.bore, extremes.least, extremes.most)
  mustLie('bolts', f.bolts, 2, 24)
  mustLie('bolt', f.bolt, 1e-3, 0.03)
  mustLie('play', f.play, 0, 5e-3)
  mustLie('land', f.land, f.thickness, 0.2)
  const hole = (f.bolt + f.play) / 2
  mustFit(
    'boltCircle',
    f.boltCircle,
    f.bore + 2 * (hole + f.land),
    'The bolt holes cut into the land round the bore',
  )
  const count = Math.round(f.bolts)
  mustFit(
    'boltCircle',
    f.boltCircle,
    (2 * hole + f.land) / Math.sin(Math.PI / count),
    'The bolt holes cut into each other',
  )
  const at = Array.from({ length: count }, (_, k): FlatPoint => {
    // two bolts lie left and right, more of them begin beside the top so that a hinge has room
    const a = (2 * Math.PI * (k + (count > 2 ? 0.5 : 0))) / count + (count > 2 ? Math.PI / 2 : 0)
    return [(f.boltCircle / 2) * Math.cos(a), (f.boltCircle / 2) * Math.sin(a)]
  })
  const pad = Math.max(hole + f.land, 1.5 * f.bolt)
  const { flap } = f
  const seat = flap ? f.bore / 2 + flap.seat : 0
  const screws: FlatPoint[] = flap
    ? [
        [-flap.apart / 2, flap.hinge],
        [flap.apart / 2, flap.hinge],
      ]
    : []
  if (flap) {
    mustLie('flap.seat', flap.seat, 1e-3, f.bore)
    mustLie('flap.screw', flap.screw, 1e-3, 0.02)
    mustFit('flap.hinge', flap.hinge, seat + flap.screw, 'The hinge stands on the seat')
    mustFit('flap.apart', flap.apart, 3 * flap.screw, 'The hinge’s screws stand too near each other')
    for (const [x, y] of at)
      for (const [u, v] of screws)
        mustFit(
          'flap.hinge',
          Math.hypot(x - u, y - v),
          hole + flap.screw / 2 + f.land,
          'A screw of the hinge meets a bolt',
        )
  }
  const outline = hullOf([
    ...circle(0, 0, f.bore / 2 + Math.max(f.land, flap?.seat ?? 0)),
    ...at.flatMap(([x, y]) => circle(x, y, pad)),
    ...screws.flatMap(([x, y]) => circle(x, y, 1.5 * flap!.screw)),
  ])
  const cross: FlatPoint[][] = [
    [
      [-f.boltCircle / 2, 0],
      [f.boltCircle / 2, 0],
    ],
    [
      [0, -f.boltCircle / 2],
      [0, f.boltCircle / 2],
    ],
  ]
  return plate({
    id: f.id,
    title: f.title,
    thickness: f.thickness,
    count: f.count ?? 1,
    outline,
    holes: [
      circle(0, 0, f.bore / 2),
      ...at.map(([x, y]) => circle(x, y, hole)),
      ...screws.map(([x, y]) => circle(x, y, flap!.screw / 2)),
    ],
    lines: [
      ...cross.map((points) => line('centre', points)),
      line('centre', circle(0, 0, f.boltCircle / 2), true),
      ...(flap
        ? [
            line('match', circle(0, 0, seat), true),
            line('fold', [
              [-flap.apart / 2, flap.hinge],
              [flap.apart / 2, flap.hinge],
            ]),
          ]
        : []),
    ],
    said: [
      say`bore ${inMm(f.bore, 0.1)}, bolts on ${inMm(f.boltCircle, 0.1)}`,
      ...(flap ? [say`seat ${inMm(flap.seat, 0.1)} wide: file it flat after welding`] : []),
    ],
  })
}

/** The gasket of a flange: its bore wider by `room` m on diameter so that it does not stand in the gas, no seat, one more millimetre of play. */
export function gasketOf(flange: FlangeShape, room: number, thickness: number): FlatPiece {
  mustLie('room', room, 0, flange.land)
  const { flap: _, ...plain } = flange
  return flangePlate({
    ...plain,
    id: `${flange.id}-gasket`,
    title: `${flange.title}, gasket`,
    thickness,
    bore: flange.bore + room,
    land: Math.max(thickness, flange.land - room / 2),
    play: flange.play + 1e-3,
  })
}
