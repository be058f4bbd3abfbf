/** Tanks to be welded of sheet: a body, two flanged ends, a ring to weld the neck into. Sizes of the file are inside ones. */
import { inMm } from '../../base/answers/amounts.ts'
import type { FlatPiece, MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import { developCone } from '../../shapes/cone.ts'
import { endCap, shapedCap } from '../../shapes/endCap.ts'
import { circle } from '../../shapes/outlines.ts'
import { plate } from '../../shapes/plate.ts'
import { developBox } from '../../shapes/profile.ts'
import { tight } from '../../shapes/seam.ts'
import { type Shaped, sheetPart } from './partMaking.ts'
import type { PatternsInputs } from './patternsFromCraft.ts'

type Tank = PatternsInputs['tanks'][number]

/** the flange turned on an end, inside radius and fold place of its bend, m: judgement */
const cap = { flange: 0.012, inside: 2e-3, k: 0.4 } as const
/** ends are dished by this part of their diameter, so that they do not drum: judgement */
const dish = 0.04
/** a ring under the neck reaches past it by this much, m, and leaves it room to be welded */
const ring = { land: 15e-3, play: 0.3e-3 } as const

const cautions = [
  'A tank that has held fuel is never welded, however well it was washed; a new one is tested with water before any petrol.',
]

export const tankParts = ({ tanks }: Pick<PatternsInputs, 'tanks'>): MadePart[] =>
  tanks.flatMap((tank, i) => (tank.sheet === undefined ? [] : [tankPart(tank, i, tank.sheet.value)]))

function tankPart(tank: Tank, i: number, t: number): MadePart {
  const id = `tank-${i + 1}`
  const title = `tank ${tank.name}`
  const shape = () => (tank.kind === 'box' ? boxed(tank, id, title, t) : rounded(tank, id, title, t))
  const size =
    tank.kind === 'box'
      ? say`A box ${inMm(tank.length.value)} by ${inMm(tank.width.value)} by ${inMm(tank.height.value)} inside`
      : say`A round tank ${inMm(tank.diameter.value)} inside`
  return sheetPart({
    id,
    title,
    of: [`tanks.${i}`],
    says: say`${size}, of sheet ${inMm(t, 0.1)} thick, with two flanged ends${tank.neck ? ' and a ring for its neck' : ''}.`,
    metal: 'aluminium',
    thickness: t,
    from: numbersOf(tank),
    paths: {
      a: `tanks.${i}.width`,
      inside: `tanks.${i}.sheet`,
      diameter: `tanks.${i}.diameter`,
      flange: `tanks.${i}.sheet`,
      corner: `tanks.${i}.height`,
    },
    cautions,
    shape: (): Shaped => {
      const made = shape()
      const neck = neckRing(tank, id, title, t)
      return {
        ...made,
        flats: [...made.flats, ...neck],
        last: [
          ...(neck.length > 0
            ? ['Cut the hole for the neck by its ring, before the box is closed, and wash all swarf out.']
            : []),
          'Weld one end, look inside along every seam, and only then the other.',
          'Fill it with water and stand it on paper for a night; then the leak test by the fuel card.',
        ],
      }
    },
  })
}

const numbersOf = (tank: Tank): Record<string, number> => ({
  ...(tank.kind === 'box'
    ? { length: tank.length.value, width: tank.width.value, height: tank.height.value }
    : {
        diameter: tank.diameter.value,
        length: tank.kind === 'lying cylinder' ? tank.length.value : tank.height.value,
      }),
  neck: tank.neck?.overCrests.value ?? 0,
})

/** What both kinds of end have. */
const endOf = (id: string, title: string, thickness: number) => ({
  id: `${id}-end`,
  title: `${title}, end`,
  thickness,
  count: 2,
  flange: cap.flange,
  pipes: [],
})

function boxed(tank: Extract<Tank, { kind: 'box' }>, id: string, title: string, t: number): Shaped {
  const [length, width, height] = [tank.length.value, tank.width.value, tank.height.value]
  const body = developBox(
    { a: width + 2 * t, b: height + 2 * t, width: length, inside: cap.inside, k: cap.k },
    { id: `${id}-body`, title: `${title}, body`, thickness: t, seam: tight },
  )
  const end = shapedCap({
    ...endOf(id, title, t),
    length: width,
    width: height,
    corner: Math.max(cap.inside + t, 2 * t),
    inside: cap.inside,
    k: cap.k,
  })
  return { flats: [body.piece, end], rolled: [body], weld: length + 4 * (width + height), folds: 4 }
}

function rounded(tank: Exclude<Tank, { kind: 'box' }>, id: string, title: string, t: number): Shaped {
  const across = tank.diameter.value
  const height = tank.kind === 'lying cylinder' ? tank.length.value : tank.height.value
  const radius = (across + t) / 2
  const body = developCone(
    { startRadius: radius, endRadius: radius, height },
    { id: `${id}-body`, title: `${title}, body`, thickness: t, seam: tight },
  )
  const end = endCap({
    ...endOf(id, title, t),
    diameter: across - t,
    rise: dish * across,
  })
  return { flats: [body.piece, end], rolled: [body], weld: height + 2 * Math.PI * across, rolls: 1 }
}

/** A ring that stiffens the sheet where a neck with a thread outside is welded in. */
function neckRing(tank: Tank, id: string, title: string, t: number): FlatPiece[] {
  const crests = tank.neck?.overCrests.value
  if (crests === undefined) return []
  const r = crests / 2 + ring.play
  return [
    plate({
      id: `${id}-neck`,
      title: `${title}, ring under the neck`,
      thickness: t,
      count: 1,
      outline: circle(0, 0, r + ring.land),
      holes: [circle(0, 0, r)],
      lines: [],
      said: [say`hole ${inMm(2 * r, 0.1)}`],
    }),
  ]
}
