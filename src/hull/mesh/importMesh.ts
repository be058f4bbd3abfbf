/**
 * A hull from an STL or 3MF file: its unit and how it lies are asked for or guessed, and every guess is said.
 * What leaks, is inside out or cuts through itself is refused with the place.
 */
import { inField, inMetres } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { type Flag, flagOf } from '../../base/answers/solved.ts'
import { flawsOf, type MeshFlaw } from '../../physics/solid/closed.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { boundsOf, flipped, type Mesh, mapPoints, type Vec3 } from '../../physics/solid/mesh.ts'
import { read3mf } from '../../physics/solid/read3mf.ts'
import { MeshFileError, readStl } from '../../physics/solid/readStl.ts'
import { sliceBetween } from '../../physics/solid/slice.ts'

type MeshUnit = 'mm' | 'm' | 'in' | 'cm'

export interface ImportChoices {
  /** what one unit of an STL file stands for; guessed when left out. 3MF files name their own */
  unit?: MeshUnit
  /** the file's axis that points forward, as '+x', '-x', '+y' …; guessed when left out */
  forward?: string
  /** the file's axis that points up */
  up?: string
}

export interface ImportedHull {
  /** body axes: x forward from the transom, y to port, z up from the lowest point; m */
  mesh: Mesh
  /** what was guessed, and what to look at */
  flags: Flag[]
}

const factor: Record<MeshUnit, number> = { mm: 1e-3, m: 1, in: 0.0254, cm: 0.01 }

/** Reads a hull mesh. Throws MeshFileError when the file cannot be read or is no closed solid. */
export function importHull(bytes: Uint8Array, choices: ImportChoices = {}): ImportedHull {
  const flags: Flag[] = []
  const raw = readAny(bytes, choices, flags)
  const laid = laidOut(raw, choices, flags)
  const flaws = flawsOf(laid)
  if (flaws.length > 0) throw new MeshFileError(`hull.mesh: ${flaws.map(inWords).join(' ')}`)
  return { mesh: laid, flags }
}

/** A flaw as the builder can find and mend it: where it is on the hull as laid, and what to do. */
function inWords(flaw: MeshFlaw): string {
  const first = flaw.at[0]
  const where = first === undefined ? '' : `, the first ${onHull(first)}`
  switch (flaw.kind) {
    case 'open edge':
      return `It leaks: ${flaw.count} edges have a face on one side only${where}. Close the skin there, deck and transom too, and save it again.`
    case 'crowded edge':
      return `${flaw.count} edges are shared by more than two faces${where}: two skins meet there. Join the parts into one solid and save it again.`
    case 'turned face':
      return `Some faces are turned round against their neighbours, along ${flaw.count} edges${where}. Turn them so that all look outwards and save it again.`
    case 'self-touching':
      return `Faces cut through each other in ${flaw.count} places${where}. Join the parts into one outer skin and save it again.`
    case 'inside out':
      return 'It is inside out: all its faces look inwards. Turn every face round and save it again.'
    default:
      return flaw.says
  }
}

const cm = (v: number): string => `${Math.round(100 * v)} cm`

function onHull([x, y, z]: readonly [number, number, number]): string {
  const aside =
    Math.abs(y) < 0.005 ? 'on the centreline' : `${cm(Math.abs(y))} to ${y > 0 ? 'port' : 'starboard'}`
  return `${cm(x)} forward of the transom, ${aside}, ${cm(z)} up`
}

function readAny(bytes: Uint8Array, choices: ImportChoices, flags: Flag[]): Mesh {
  const zip = bytes[0] === 0x50 && bytes[1] === 0x4b
  if (zip) {
    const { mesh, unit } = read3mf(bytes)
    flags.push({
      code: 'mesh unit',
      text: `The 3MF file says its unit is the ${unit}.`,
      path: 'hull.mesh unit',
    })
    return mesh
  }
  const mesh = readStl(bytes)
  const { low, high } = boundsOf(mesh)
  const size = Math.max(...[0, 1, 2].map((k) => high[k]! - low[k]!))
  const unit = choices.unit ?? guessUnit(size)
  if (choices.unit === undefined)
    flags.push(
      flagOf(
        'mesh unit',
        say`An STL file carries no unit: its longest side of ${String(Number(size.toPrecision(4)))} was taken as ${unit}, a hull ${inMetres(size * factor[unit])} long. Is that right? If so, write "mesh unit: ${unit}" under hull.`,
        'hull.mesh unit',
      ),
    )
  const long = size * factor[unit]
  if (!(long > 0.5 && long < 15))
    flags.push(
      flagOf(
        'mesh size',
        say`The hull comes out ${inField(long, 'length', 'm')} long. Is the unit right?`,
        'hull.mesh unit',
      ),
    )
  return mapPoints(mesh, (x, y, z) => [x * factor[unit], y * factor[unit], z * factor[unit]])
}

/** The unit that makes the longest side nearest to 2.4 m, the middle of this kind of craft, on a ratio scale. */
function guessUnit(size: number): MeshUnit {
  const far = (u: MeshUnit) => Math.abs(Math.log((size * factor[u]) / 2.4))
  return (['mm', 'm', 'in', 'cm'] as const).reduce((a, b) => (far(b) < far(a) ? b : a))
}

const axisOf = (text: string): { k: number; sign: 1 | -1 } => {
  const m = /^([+-]?)([xyz])$/i.exec(text.trim())
  if (m === null) throw new MeshFileError(`hull mesh axis: "${text}", expected +x, -x, +y, -y, +z or -z`)
  return { k: 'xyz'.indexOf(m[2]!.toLowerCase()), sign: m[1] === '-' ? -1 : 1 }
}

/** Turns the mesh into body axes and puts the origin at the transom foot. */
function laidOut(mesh: Mesh, choices: ImportChoices, flags: Flag[]): Mesh {
  const { low, high } = boundsOf(mesh)
  const sides = [0, 1, 2].map((k) => high[k]! - low[k]!)
  const up =
    choices.up === undefined ? { k: sides.indexOf(Math.min(...sides)), sign: 1 as const } : axisOf(choices.up)
  const along =
    choices.forward === undefined
      ? { k: sides.indexOf(Math.max(...sides.map((s, k) => (k === up.k ? -1 : s)))), sign: 1 as 1 | -1 }
      : axisOf(choices.forward)
  if (along.k === up.k) throw new MeshFileError('hull mesh axes: forward and up are the same axis')
  const across = 3 - up.k - along.k
  // right-handed: across = up × forward
  const even = (along.k + 1) % 3 === across ? 1 : -1
  let turned = oriented(mesh, along, across, up, even)
  if (choices.forward === undefined && fullerForward(turned)) {
    along.sign = -1
    turned = oriented(mesh, along, across, up, even)
  }
  if (choices.up === undefined || choices.forward === undefined) {
    const plain = (a: { k: number; sign: number }) => `${a.sign < 0 ? '-' : '+'}${'xyz'[a.k]}`
    const name = (a: { k: number; sign: number }) => `${a.sign < 0 ? '−' : '+'}${'xyz'[a.k]}`
    const bow = choices.forward === undefined ? 'its slimmer end as the bow' : 'the bow as told'
    flags.push({
      code: 'mesh lie',
      text: `The hull was laid with ${name(up)} of the file up, its length along ${'xyz'[along.k]}, ${bow}. Look at the picture: is the deck up and the bow forward? If so, write "bow along: ${plain(along)}" and "deck faces: ${plain(up)}" under hull.`,
      path: 'hull.mesh',
    })
  }
  const b = boundsOf(turned)
  const middle = (b.low[1] + b.high[1]) / 2
  return mapPoints(turned, (x, y, z): Vec3 => [x - b.low[0], y - middle, z - b.low[2]])
}

function oriented(
  mesh: Mesh,
  along: { k: number; sign: 1 | -1 },
  across: number,
  up: { k: number; sign: 1 | -1 },
  even: number,
): Mesh {
  const side = even * along.sign * up.sign
  const before = solidProperties(mesh).volume
  const out = mapPoints(mesh, (x, y, z): Vec3 => {
    const p = [x, y, z]
    return [along.sign * p[along.k]!, side * p[across]!, up.sign * p[up.k]!]
  })
  // a proper turn keeps the sign of the volume; keep it so whatever the axes
  return Math.sign(solidProperties(out).volume) === Math.sign(before) ? out : flipped(out)
}

/** True when the forward third holds more than the after third: then it lies stern first. */
function fullerForward(mesh: Mesh): boolean {
  const { low, high } = boundsOf(mesh)
  const third = (high[0] - low[0]) / 3
  const volume = (m: Mesh | undefined) => (m === undefined ? 0 : Math.abs(solidProperties(m).volume))
  return (
    volume(sliceBetween(mesh, 'x', high[0] - third, high[0] + 1)) >
    volume(sliceBetween(mesh, 'x', low[0] - 1, low[0] + third)) * 1.001
  )
}
