import type { CheckRow } from '../src/base/answers/check.ts'
import { developCone } from '../src/shapes/cone.ts'
import { developElbow } from '../src/shapes/elbow.ts'
import { jointGap, proveFold } from '../src/shapes/refold.ts'
import { tight } from '../src/shapes/seam.ts'
import { patternReckoners } from '../src/trades/patterns/patternsReckoners.ts'
import { reckonedBy } from './reckoned.ts'
import { type Line, letteredRows } from './row.ts'

const lettered = letteredRows('patterns')
const reckon = reckonedBy(patternReckoners)
const degree = Math.PI / 180
const mean = { measured: 'mean' }
const mm = 1e3
const mm2 = 1e6

/** values worked out by hand from the formulas of the handbooks, outside this code */
const byHand =
  'handbooks of sheet-metal pattern drafting, their formulas worked out by hand outside this code'

function cones(): CheckRow[] {
  const big = reckon('cone-pattern', { start: 0.1, end: 0.04, height: 0.12, thickness: 1e-3 }, mean)
  const inside = reckon(
    'cone-pattern',
    { start: 0.1, end: 0.04, height: 0.12, thickness: 1e-3 },
    { measured: 'inside' },
  )
  const long = reckon('cone-pattern', { start: 0.09, end: 0.04, height: 0.2, thickness: 1e-3 }, mean)
  const [strip] = developCone(
    { startRadius: 0.05, endRadius: 0.02, height: 0.12 },
    { id: 'c', title: 'c', thickness: 1e-3, seam: tight },
  ).strips
  return [
    ...lettered(
      'M-44',
      [
        ['cone Ø100 to Ø40, height 120: slant', 'mm', big.slant! * mm, 123.693],
        ['its outer arc', 'mm', big.outer! * mm, 206.155],
        ['its inner arc', 'mm', big.inner! * mm, 82.462],
        ['its sector', 'deg', big.angle! / degree, 87.313],
        ['the sheet it takes across', 'mm', big.width! * mm, 284.631],
      ],
      'derived',
      byHand,
      { within: 0.001 },
    ),
    ...lettered('M-45', [['its area', 'mm²', big.area! * mm2, 27201.55]], 'derived', byHand, {
      within: 0.05,
    }),
    ...lettered(
      'M-44f',
      [
        [
          'wide arc longer where the same diameters are inside ones of 1 mm sheet',
          'mm',
          (inside.outer! * inside.angle! - big.outer! * big.angle!) * mm,
          Math.PI * Math.cos(Math.atan2(30, 120)),
        ],
      ],
      'exact',
      'edges square to the sheet: π t cos α',
      { within: 1e-9 },
    ),
    ...lettered(
      'M-44g',
      [['cone 200 long, Ø40 to Ø90: sector', 'deg', long.angle! / degree, (180 * 50) / Math.hypot(200, 25)]],
      'exact',
      'developed cone: arc π Δd over the slant length',
      { within: 1e-9 },
    ),
    ...lettered(
      'M-44h',
      [['cone rolled up from its drawing: gap of its seam', 'mm', proveFold(strip!).seam * mm, 0]],
      'exact',
      'a developable surface closes (G. Monge)',
      { within: 0.1 },
    ),
    ...lettered(
      'M-46',
      [
        [
          'blank of a pipe of 60 mm outside, 1.2 mm wall',
          'mm',
          reckon('pipe-blank', { diameter: 0.06, thickness: 1.2e-3 }, { measured: 'outside' }).round! * mm,
          184.726,
        ],
      ],
      'derived',
      'π times the mean diameter, by hand',
      { within: 0.001 },
    ),
    ...lettered(
      'M-104',
      [
        [
          'oval of two straights of 60 mm and ends of mean Ø79',
          'mm',
          reckon('pipe-blank', { diameter: 0.079, straight: 0.06, thickness: 1e-3 }, mean).round! * mm,
          368.186,
        ],
        [
          'blank of a cap Ø80 with a flange of 8 mm',
          'mm',
          reckon('cap-blank', { diameter: 0.08, flange: 8e-3 }).blank! * mm,
          94.657,
        ],
      ],
      'derived',
      'by hand; blank √(d² + 4 d f) of deep-drawing handbooks, from memory',
      { within: 0.002 },
    ),
  ]
}

function elbows(): CheckRow[] {
  const plain = { start: 0.05, end: 0.05, bendRadius: 0.075, turn: Math.PI / 2, joints: 3 }
  const pieces = reckon('elbow-pieces', plain)
  const cut = reckon('elbow-cut', { ...plain, cut: 1 })
  const taper = taperedElbow()
  return [
    ...lettered(
      'M-47',
      [
        ['elbow Ø50, axis 75, 90° in three joints: half a joint', 'deg', pieces.half! / degree, 15],
        ['middle piece', 'mm', pieces.middlePiece! * mm, 40.192],
        ['end piece', 'mm', pieces.endPiece! * mm, 20.096],
        ['throat', 'mm', pieces.throat! * mm, 26.795],
        ['back', 'mm', pieces.back! * mm, 53.59],
        ['cut curve’s height either way', 'mm', ((cut.most! - cut.least!) / 2) * mm, 6.6987],
      ],
      'derived',
      byHand,
      { within: 0.001 },
    ),
    ...lettered(
      'M-48',
      [
        ['half axis of the joint’s ellipse', 'mm', cut.major! * mm, 25.8819],
        ['its other half axis', 'mm', cut.minor! * mm, 25],
        ['length of the whole blank', 'mm', pieces.length! * mm, 120.577],
        ['length of the arc', 'mm', pieces.arc! * mm, 117.81],
      ],
      'derived',
      byHand,
      { within: 0.001 },
    ),
    ...lettered('M-52', taper.cuts, 'derived', taper.source, { within: 0.0005 }),
    ...lettered('M-53', taper.ellipse, 'derived', taper.source, { within: 0.002 }),
    ...lettered(
      'M-54',
      taper.gaps,
      'exact',
      'equal cones round one sphere meet in a plane (J. P. Dandelin, 1822): pieces rolled up from their drawings touch',
      { within: 0.1 },
    ),
  ]
}

/** A bend of 90° in three joints through a cone from Ø60 to Ø30, axis 90. */
function taperedElbow(): { cuts: Line[]; ellipse: Line[]; gaps: Line[]; source: string } {
  const e = { startRadius: 0.03, endRadius: 0.015, bendRadius: 0.09, turn: Math.PI / 2, joints: 3 }
  const given = { start: 0.06, end: 0.03, bendRadius: 0.09, turn: Math.PI / 2, joints: 3 }
  const cut = (k: number) => reckon('elbow-cut', { ...given, cut: k })
  const made = developElbow(e, { id: 'e', title: 'e', thickness: 1e-3, seam: tight })
  const [first, second, third] = [cut(1), cut(2), cut(3)]
  // lengths are told from the apex of the cone: start radius over the sine of its half-angle
  const rise = Math.hypot(0.015, reckon('elbow-pieces', given).length!)
  const apex = (0.03 * rise) / 0.015
  const from = (v: number) => (apex - v) * mm
  return {
    source:
      'the cone’s polar equation of a plane cut about its apex, worked out by hand outside this code; Ø60 to Ø30, axis 90, 90° in three',
    cuts: [
      ['elbow through a cone: second cut, nearest to the apex', 'mm', from(second.most!), 209.8852],
      ['farthest from it', 'mm', from(second.least!), 221.8786],
      ['third cut, farthest', 'mm', from(third.least!), 172.5722],
      ['nearest', 'mm', from(third.most!), 163.244],
    ],
    ellipse: [
      ['first cut: half axis of its ellipse', 'mm', first.major! * mm, 28.1674],
      ['its other half axis', 'mm', first.minor! * mm, 27.1971],
      ['length of the first cut', 'mm', first.round! * mm, 173.946],
      ['of the second', 'mm', second.round! * mm, 142.319],
      ['of the third', 'mm', third.round! * mm, 110.693],
    ],
    gaps: made.cuts.map((_, k): Line => {
      const [a, b] = [made.pieces[k]!.strips[0]!, made.pieces[k + 1]!.strips[0]!]
      return [`gap of joint ${k + 1} after folding`, 'mm', jointGap(a, 'far', b, 'near') * mm, 0]
    }),
  }
}

function transitions(): CheckRow[] {
  const square = { length: 0.1, width: 0.1, diameter: 0.06, height: 0.08 }
  const at = (azimuth: number) => reckon('square-to-round', { ...square, azimuth: azimuth * degree })
  const lengths: Line[] = (
    [
      [0, 96.4365],
      [30, 90.5645],
      [60, 90.5645],
      [90, 96.4365],
    ] as const
  ).map(([a, expected]) => [`element at ${a}°`, 'mm', at(a).element! * mm, expected])
  const saddle = (angle: number, turn: number) =>
    reckon('saddle-cut', { branch: 0.03, header: 0.06, angle: angle * degree, turn: turn * degree }).length! *
    mm
  const leaning = reckon('oblique-cone', { base: 0.06, top: 0.06, height: 0.1, offset: 0.05 })
  return [
    ...lettered(
      'M-55',
      [
        ['square 100 to Ø60, height 80: sector at a corner', 'deg', at(45).corner! / degree, 27.779],
        ['height of a side’s triangle', 'mm', at(45).sideTriangle! * mm, 82.462],
      ],
      'derived',
      byHand,
      { within: 0.001 },
    ),
    ...lettered('M-56', lengths, 'derived', byHand, { within: 0.001 }),
    ...lettered('M-56e', [['area of the pattern', 'mm²', at(45).area! * mm2, 24690.66]], 'derived', byHand, {
      within: 0.1,
    }),
    ...lettered(
      'M-57',
      [
        ['leaning pipe: every element', 'mm', leaning.longest! * mm, Math.hypot(100, 50)],
        [
          'hole for Ø20 through a plate at 60° from square',
          'mm',
          reckon('hole-for-pipe', { diameter: 0.02, lean: 60 * degree, clearance: 0 }).along! * mm,
          40,
        ],
      ],
      'exact',
      'Pythagoras; 1/cos 60° is 2',
      { within: 1e-6 },
    ),
    ...lettered(
      'M-58',
      [
        ['Ø30 square on Ø60: cut at 0°', 'mm', saddle(90, 0), 30],
        ['at 45°', 'mm', saddle(90, 45), 28.0624],
        ['at 90°', 'mm', saddle(90, 90), 25.9808],
        ['at 45° between the axes: at 0°', 'mm', saddle(45, 0), 27.4264],
        ['at 180°', 'mm', saddle(45, 180), 57.4264],
      ],
      'derived',
      byHand,
      { within: 0.001 },
    ),
  ]
}

function bends(): CheckRow[] {
  const bend = reckon('bend-allowance', { inside: 3e-3, thickness: 1.5e-3, k: 0.4 })
  const k = (ratio: number) => reckon('neutral-layer', { inside: ratio * 1e-3, thickness: 1e-3 }).k!
  // 90° lengths of the handbook: L = c t + 1.57 R
  const handbook = (c: number) =>
    reckon('bend-allowance', { inside: 2e-3, thickness: 1e-3, k: c / (Math.PI / 2) }).allowance! * mm
  return [
    ...lettered(
      'M-59',
      [
        ['90° inside 3 mm in 1.5 mm, K 0.40: allowance', 'mm', bend.allowance! * mm, 5.6549],
        ['deduction', 'mm', bend.deduction! * mm, 3.3451],
      ],
      'derived',
      'θ (Ri + K t) and 2 (Ri + t) tan(θ/2) less that, by hand',
      { within: 0.0005 },
    ),
    ...lettered(
      'M-60',
      [
        ['neutral layer at radius 1 t', '1', k(1), 0.325],
        ['at 2 t', '1', k(2), 0.4003],
        ['at 5 t', '1', k(5), 0.4997],
      ],
      'memory',
      'DIN 6935, from memory; from 5 t on the standard sets it to a half',
      { within: 0.0004 },
    ),
    ...lettered(
      'M-61',
      [
        ['90° in 1 mm soft brass round 2 mm', 'mm', handbook(0.55), 0.55 + 1.57 * 2],
        ['in soft steel or aluminium', 'mm', handbook(0.64), 0.64 + 1.57 * 2],
        ['in hard steel', 'mm', handbook(0.71), 0.71 + 1.57 * 2],
      ],
      'memory',
      'Machinery’s Handbook, length of sheet in right-angled bends, from memory (its 1.57 is π/2 rounded)',
      { within: 0.003 },
    ),
  ]
}

export const patternsChecks = (): CheckRow[] => [...cones(), ...elbows(), ...transitions(), ...bends()]
