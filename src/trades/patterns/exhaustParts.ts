/** The parts of an exhaust: cones, tubes and bends of the pipe, muffler, flanges and gaskets. Diameters of the file are inside ones. */
import { inCount, inDegrees, inMm } from '../../base/answers/amounts.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import { developCone } from '../../shapes/cone.ts'
import type { Development } from '../../shapes/development.ts'
import { endCap, shapedCap } from '../../shapes/endCap.ts'
import { flangePlate, gasketOf } from '../../shapes/flangePlate.ts'
import { meanEnds } from '../../shapes/meanFibre.ts'
import { mitredPipe } from '../../shapes/mitredPipe.ts'
import { type Place, put } from '../../shapes/placing.ts'
import { developBox } from '../../shapes/profile.ts'
import { jointsAlong } from '../../shapes/route.ts'
import { tight } from '../../shapes/seam.ts'
import type { Strip } from '../../shapes/strip.ts'
import { type Shaped, sheetPart } from './partMaking.ts'
import type { PipeIn, PipePart } from './patternsFromCraft.ts'

/** A developed piece moved to where it lies in the craft. */
function movedTo(place: Place, d: Development): Development {
  const strips = d.strips.map((s): Strip => {
    const space = new Float64Array(s.space.length)
    for (let o = 0; o < space.length; o += 3)
      space.set(put(place, [s.space[o]!, s.space[o + 1]!, s.space[o + 2]!]), o)
    return { ...s, space }
  })
  return { ...d, strips }
}

/** The pieces of one part of a pipe, in place where its way is known. */
export function pipePieces(id: string, title: string, part: PipePart, place?: Place): readonly Development[] {
  const mean = meanEnds(part.from, part.to, part.length, 'inside', part.wall)
  const cone = { startRadius: mean.start, endRadius: mean.end, height: part.length }
  const sheeting = { id, title, thickness: part.wall, seam: tight }
  const made =
    part.bend > 0
      ? mitredPipe(
          cone,
          jointsAlong(part).map((j) => ({ ...j, clock: part.clock })),
          sheeting,
        ).pieces
      : [developCone(cone, sheeting)]
  return place ? made.map((d) => movedTo(place, d)) : made
}

function pipePart(pipe: PipeIn, k: number, place: Place | undefined): MadePart {
  const part = pipe.parts[k]!
  const id = `pipe-${pipe.engine + 1}-${k + 1}`
  const title = `${part.name} of ${pipe.name}`
  const size =
    part.from === part.to
      ? say`${inMm(part.from, 0.1)} inside, ${inMm(part.length, 0.1)} long`
      : say`${inMm(part.from, 0.1)} to ${inMm(part.to, 0.1)} inside, ${inMm(part.length, 0.1)} long`
  const pieces = jointsAlong(part).length + 1
  return sheetPart({
    id,
    title,
    of: [part.path],
    says:
      part.bend > 0
        ? say`${size}, bent ${inDegrees(part.bend)} in ${inCount(pieces)} pieces.`
        : say`${size}.`,
    metal: 'steel',
    thickness: part.wall,
    from: { length: part.length, from: part.from, to: part.to, bend: part.bend, clock: part.clock },
    shape: (): Shaped => {
      const made = pipePieces(id, title, part, place)
      const round = Math.PI * (part.startRadius + part.endRadius)
      return {
        flats: made.map((d) => d.piece),
        rolled: made,
        // the long seams, the joints between pieces and one to the next part
        weld: part.length + made.length * round,
        rolls: made.length,
      }
    },
  })
}

/** the flange turned on a cap, and the inside radius and fold place of its bend, m: judgement */
const cap = { flange: 0.012, inside: 1.5e-3, k: 0.4 } as const

function mufflerPart(pipe: PipeIn): MadePart[] {
  const { muffler, wall } = pipe
  if (!muffler) return []
  const id = `muffler-${pipe.engine + 1}`
  const title = `muffler of ${pipe.name}`
  const { length, width, height, inlet, outlet } = muffler
  const hole = (bore: number) => ({ radius: bore / 2 + wall / 2, x: 0, y: 0, lean: 0, clearance: 4e-4 })
  const ends = [
    { name: 'front', bore: inlet },
    { name: 'back', bore: outlet },
  ]
  return [
    sheetPart({
      id,
      title,
      of: [`${pipe.at}.muffler`],
      says:
        height === undefined
          ? say`A round box ${inMm(width, 0.1)} inside and ${inMm(length, 0.1)} long, with two flanged ends.`
          : say`A box ${inMm(width, 0.1)} by ${inMm(height, 0.1)} inside and ${inMm(length, 0.1)} long, with two flanged ends.`,
      metal: 'steel',
      thickness: wall,
      from: { length, width, height: height ?? 0, inlet, outlet },
      paths: { diameter: `${pipe.at}.muffler.width`, pipes: `${pipe.at}.stinger` },
      shape: () => {
        const sheeting = { id: `${id}-body`, title: `${title}, body`, thickness: wall, seam: tight }
        const sized = height === undefined ? undefined : height
        const body =
          sized === undefined
            ? developCone(
                { startRadius: (width + wall) / 2, endRadius: (width + wall) / 2, height: length },
                sheeting,
              )
            : developBox(
                { a: width + 2 * wall, b: sized + 2 * wall, width: length, inside: cap.inside, k: cap.k },
                sheeting,
              )
        const caps = ends.map((e) => {
          const common = {
            id: `${id}-${e.name}`,
            title: `${title}, ${e.name}`,
            thickness: wall,
            flange: cap.flange,
            pipes: [hole(e.bore)],
          }
          return sized === undefined
            ? endCap({ ...common, diameter: width - wall, rise: 0.04 * width })
            : shapedCap({
                ...common,
                length: width,
                width: sized,
                corner: Math.max(cap.inside + wall, 2 * wall),
                inside: cap.inside,
                k: cap.k,
              })
        })
        const round = sized === undefined ? Math.PI * width : 2 * (width + sized)
        return {
          flats: [body.piece, ...caps],
          rolled: [body],
          weld: length + 2 * round,
          rolls: sized === undefined ? 1 : 0,
          folds: sized === undefined ? 0 : 4,
          last: ['Close one end, pack or look inside, and only then the other.'],
        }
      },
    }),
  ]
}

/** bolts and plates of a flange, m: judgement */
const plateOf = { thickness: 5e-3, bolt: 6e-3, play: 5e-4, land: 6e-3, gasket: 1e-3, room: 2e-3 } as const

function flangeParts(pipe: PipeIn): MadePart[] {
  const at = (name: string, id: string, bore: number, of: string, flap: boolean) => {
    const hole = bore + 2 * pipe.wall
    // wide enough for the gasket too, whose bore and bolt holes are wider
    const circle = hole + plateOf.room + plateOf.bolt + plateOf.play + 1e-3 + 2 * plateOf.land
    const shape = {
      id,
      title: `${name} of ${pipe.name}`,
      thickness: plateOf.thickness,
      bore: hole,
      boltCircle: circle,
      bolts: flap ? 4 : 2,
      bolt: plateOf.bolt,
      play: plateOf.play,
      land: plateOf.land,
      ...(flap ? { flap: { seat: 5e-3, hinge: circle / 2 + 0.014, apart: 0.5 * circle, screw: 4e-3 } } : {}),
    }
    return sheetPart({
      id,
      title: shape.title,
      of: [of],
      says: say`A plate ${inMm(plateOf.thickness)} thick with a bore of ${inMm(hole, 0.1)}, and its gasket; lay it on the cylinder or the hull before drilling.`,
      metal: 'steel',
      thickness: plateOf.thickness,
      from: { bore: hole, circle, bolts: shape.bolts, flap: String(flap) },
      shape: () => ({
        flats: [flangePlate(shape), gasketOf(shape, plateOf.room, plateOf.gasket)],
        weld: Math.PI * hole,
        last: [
          'After welding, rub the face on a sheet of glass with abrasive paper until it shines all over.',
        ],
      }),
    })
  }
  return [
    at('flange', `flange-${pipe.engine + 1}`, pipe.flangeBore, `${pipe.at}.duct`, false),
    ...(pipe.outlet
      ? [
          at(
            'outlet flange',
            `outlet-flange-${pipe.engine + 1}`,
            pipe.outlet.bore,
            `${pipe.at}.outlet`,
            pipe.outlet.flap,
          ),
        ]
      : []),
  ]
}

/** All parts of one exhaust; `frames` where each part of its pipe begins, if its way is known. */
export function exhaustParts(pipe: PipeIn, frames?: readonly Place[]): MadePart[] {
  return [
    ...pipe.parts.flatMap((part, k) => (part.made === 'box' ? [] : [pipePart(pipe, k, frames?.[k])])),
    ...mufflerPart(pipe),
    ...flangeParts(pipe),
  ]
}
