/**
 * STL meshes, binary or text, from strangers: sizes checked before anything is allocated, numbers before they are used.
 * Format: 3D Systems, StereoLithography Interface Specification (1989): 80-byte header, count, 50 bytes a triangle; or
 * "solid … facet normal … outer loop … vertex x y z".
 */
import { type Mesh, makeMesh } from './mesh.ts'

/** most triangles taken: a hull of a million faces is a scan, not a hull */
export const mostTriangles = 500_000

/** An unreadable mesh file; the message says what was found and what was expected. */
export class MeshFileError extends Error {}

/** Triangles of an STL file with equal corners joined; units as in the file. Throws MeshFileError. */
export function readStl(bytes: Uint8Array): Mesh {
  const soup = isBinary(bytes) ? binary(bytes) : text(bytes)
  for (let i = 0; i < soup.length; i++)
    if (!Number.isFinite(soup[i]!) || Math.abs(soup[i]!) > 1e9)
      throw new MeshFileError(
        `STL triangle ${Math.floor(i / 9)}: corner ${soup[i]}, expected a number within ±1e9`,
      )
  return weldedSoup(soup)
}

/** Binary when the count in the header fits the length of the file; some text writers start binary ones with "solid" too. */
function isBinary(bytes: Uint8Array): boolean {
  if (bytes.length < 84) return false
  const count = new DataView(bytes.buffer, bytes.byteOffset).getUint32(80, true)
  return bytes.length === 84 + 50 * count || !startsSolid(bytes)
}

function startsSolid(bytes: Uint8Array): boolean {
  let i = 0
  while (i < 80 && bytes[i]! <= 32) i++
  return String.fromCharCode(...bytes.slice(i, i + 5)).toLowerCase() === 'solid'
}

function binary(bytes: Uint8Array): Float64Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const count = view.getUint32(80, true)
  if (count > mostTriangles)
    throw new MeshFileError(`STL: ${count} triangles, expected at most ${mostTriangles}`)
  if (bytes.length < 84 + 50 * count)
    throw new MeshFileError(
      `STL: cut short, ${bytes.length} bytes for ${count} triangles, expected ${84 + 50 * count}`,
    )
  const soup = new Float64Array(9 * count)
  for (let t = 0, at = 84; t < count; t++, at += 50)
    for (let k = 0; k < 9; k++) soup[9 * t + k] = view.getFloat32(at + 12 + 4 * k, true)
  return soup
}

function text(bytes: Uint8Array): Float64Array {
  if (!startsSolid(bytes))
    throw new MeshFileError('STL: found neither a binary file of a whole length nor the word "solid"')
  const out: number[] = []
  // piece by piece, so that a long file never becomes one long string
  const word = /vertex\s+(\S+)\s+(\S+)\s+(\S+)/gi
  const chunk = 1 << 20
  let rest = ''
  for (let at = 0; at < bytes.length; at += chunk) {
    let piece = rest
    const end = Math.min(bytes.length, at + chunk)
    for (let i = at; i < end; i += 4096)
      piece += String.fromCharCode(...bytes.subarray(i, Math.min(end, i + 4096)))
    const cut = end === bytes.length ? piece.length : piece.lastIndexOf('\n') + 1
    if (cut === 0 && piece.length > 1 << 22)
      throw new MeshFileError('STL: a line of more than 4 million characters')
    for (const m of piece.slice(0, cut).matchAll(word)) {
      out.push(Number(m[1]), Number(m[2]), Number(m[3]))
      if (out.length > 9 * mostTriangles) throw new MeshFileError(`STL: more than ${mostTriangles} triangles`)
    }
    rest = piece.slice(cut)
  }
  if (out.length === 0) throw new MeshFileError('STL: no triangles found')
  if (out.length % 9 !== 0)
    throw new MeshFileError(`STL: ${out.length / 3} corners, expected a multiple of 3`)
  return Float64Array.from(out)
}

/** Triangle soup with corners nearer than a millionth of the size joined, triangles that vanish left out. */
function weldedSoup(soup: Float64Array): Mesh {
  if (soup.length === 0) throw new MeshFileError('mesh: no triangles found')
  let low = Infinity
  let high = -Infinity
  for (let i = 0; i < soup.length; i++) {
    low = Math.min(low, soup[i]!)
    high = Math.max(high, soup[i]!)
  }
  const step = Math.max((high - low) * 1e-6, 1e-12)
  const names = new Map<string, number>()
  const points: number[] = []
  const triangles: number[] = []
  const corner = (at: number): number => {
    const name = `${Math.round(soup[at]! / step)},${Math.round(soup[at + 1]! / step)},${Math.round(soup[at + 2]! / step)}`
    let i = names.get(name)
    if (i === undefined) {
      i = points.length / 3
      names.set(name, i)
      points.push(soup[at]!, soup[at + 1]!, soup[at + 2]!)
    }
    return i
  }
  for (let t = 0; t < soup.length; t += 9) {
    const a = corner(t)
    const b = corner(t + 3)
    const c = corner(t + 6)
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c)
  }
  return makeMesh(points, triangles)
}
