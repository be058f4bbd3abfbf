/**
 * 3MF meshes: a zip with 3D/3dmodel.model, XML of vertices, triangles, components and build items.
 * Format: 3MF Consortium, 3MF Core Specification 1.3. Hostile input: sizes are checked before unpacking, entities are not expanded,
 * components may not contain themselves, transforms and indices are checked.
 */
import { XMLParser } from 'fast-xml-parser'
import { strFromU8, unzipSync } from 'fflate'
import { joined, type Mesh, makeMesh, mapPoints } from './mesh.ts'
import { MeshFileError, mostTriangles } from './readStl.ts'

const mostBytes = 120e6
/** components inside components */
const deepest = 8

/** metres of each unit name of the specification */
const units: Readonly<Record<string, number>> = {
  micron: 1e-6,
  millimeter: 1e-3,
  centimeter: 1e-2,
  inch: 0.0254,
  foot: 0.3048,
  meter: 1,
}

interface XmlObject {
  '@id'?: string
  mesh?: {
    vertices?: { vertex?: Record<string, string>[] }
    triangles?: { triangle?: Record<string, string>[] }
  }
  components?: { component?: Record<string, string>[] }
}

/** The solids of the build, in metres by the file's own unit, and that unit. Throws MeshFileError. */
export function read3mf(bytes: Uint8Array): { mesh: Mesh; unit: string } {
  const model = modelOf(bytes)
  const unit = model['@unit'] ?? 'millimeter'
  const scale = units[unit]
  if (scale === undefined)
    throw new MeshFileError(`3MF: unit "${unit}", expected one of ${Object.keys(units).join(', ')}`)
  const objects = new Map<string, XmlObject>()
  for (const o of model.resources?.object ?? []) if (o['@id'] !== undefined) objects.set(o['@id'], o)
  const items: Record<string, string>[] = model.build?.item ?? []
  const parts = (
    items.length > 0 ? items : [...objects.keys()].map((id): Record<string, string> => ({ '@objectid': id }))
  ).flatMap((item) => placed(objects, item, 0))
  if (parts.length === 0) throw new MeshFileError('3MF: nothing to build: no object has triangles')
  const all = joined(parts)
  if (all.triangles.length > 3 * mostTriangles)
    throw new MeshFileError(`3MF: more than ${mostTriangles} triangles`)
  return { mesh: mapPoints(all, (x, y, z) => [scale * x, scale * y, scale * z]), unit }
}

interface XmlModel {
  '@unit'?: string
  resources?: { object?: XmlObject[] }
  build?: { item?: Record<string, string>[] }
}

function modelOf(bytes: Uint8Array): XmlModel {
  let files: Record<string, Uint8Array>
  try {
    files = unzipSync(bytes, {
      filter: (f) => {
        if (!/\.model$/i.test(f.name)) return false
        if (f.originalSize > mostBytes)
          throw new MeshFileError(
            `3MF: ${f.name} unpacks to ${f.originalSize} bytes, expected at most ${mostBytes}`,
          )
        return true
      },
    })
  } catch (error) {
    if (error instanceof MeshFileError) throw error
    throw new MeshFileError('3MF: not a zip file that can be unpacked')
  }
  const names = Object.keys(files)
  const name = names.find((n) => /3dmodel\.model$/i.test(n)) ?? names[0]
  if (name === undefined) throw new MeshFileError('3MF: no 3D/3dmodel.model inside')
  const text = strFromU8(files[name]!)
  if (/<!DOCTYPE/i.test(text.slice(0, 4096)))
    throw new MeshFileError('3MF: found a DOCTYPE, which the specification forbids')
  const lists = new Set(['object', 'vertex', 'triangle', 'component', 'item'])
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '@',
    parseAttributeValue: false,
    parseTagValue: false,
    processEntities: false,
    removeNSPrefix: true,
    isArray: (tag) => lists.has(tag),
  })
  let parsed: { model?: XmlModel }
  try {
    parsed = parser.parse(text) as { model?: XmlModel }
  } catch {
    throw new MeshFileError('3MF: the model is not well-formed XML')
  }
  if (parsed.model === undefined || typeof parsed.model !== 'object')
    throw new MeshFileError('3MF: no <model> in the file')
  return parsed.model
}

function placed(objects: Map<string, XmlObject>, at: Record<string, string>, depth: number): Mesh[] {
  if (depth > deepest)
    throw new MeshFileError(`3MF: components more than ${deepest} deep, or inside themselves`)
  const id = at['@objectid'] ?? ''
  const object = objects.get(id)
  if (object === undefined) throw new MeshFileError(`3MF: object ${JSON.stringify(id)} is not in the file`)
  const own = meshOf(object, id)
  const inside = (object.components?.component ?? []).flatMap((c) => placed(objects, c, depth + 1))
  const all = own === undefined ? inside : [own, ...inside]
  const m = matrixOf(at['@transform'])
  return m === undefined ? all : all.map((mesh) => transformed(mesh, m))
}

function meshOf(object: XmlObject, id: string): Mesh | undefined {
  const vertices = object.mesh?.vertices?.vertex ?? []
  const triangles = object.mesh?.triangles?.triangle ?? []
  if (triangles.length === 0) return undefined
  if (triangles.length > mostTriangles || vertices.length > 3 * mostTriangles)
    throw new MeshFileError(
      `3MF: object ${id} has ${triangles.length} triangles, expected at most ${mostTriangles}`,
    )
  const number = (v: Record<string, string>, key: string): number => {
    const text = v[key]
    const n = text === undefined || text.trim() === '' ? Number.NaN : Number(text)
    if (!Number.isFinite(n) || Math.abs(n) > 1e9)
      throw new MeshFileError(
        `3MF: object ${id}, ${key.slice(1)} = ${JSON.stringify(text)}, expected a number`,
      )
    return n
  }
  try {
    return makeMesh(
      vertices.flatMap((v) => [number(v, '@x'), number(v, '@y'), number(v, '@z')]),
      triangles.flatMap((t) => [number(t, '@v1'), number(t, '@v2'), number(t, '@v3')]),
    )
  } catch (error) {
    if (error instanceof RangeError) throw new MeshFileError(`3MF: object ${id}: ${error.message}`)
    throw error
  }
}

/** Twelve numbers, rows of a matrix that acts on row vectors. */
function matrixOf(text: string | undefined): number[] | undefined {
  if (text === undefined) return undefined
  const m = text.trim().split(/\s+/).map(Number)
  if (m.length !== 12 || !m.every(Number.isFinite))
    throw new MeshFileError(`3MF: transform "${text.slice(0, 80)}", expected twelve numbers`)
  return m
}

function transformed(mesh: Mesh, m: number[]): Mesh {
  const [a, b, c, d, e, f, g, h, i, x0, y0, z0] = m as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  const turn = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
  return mapPoints(
    mesh,
    (x, y, z) => [a * x + d * y + g * z + x0, b * x + e * y + h * z + y0, c * x + f * y + i * z + z0],
    turn < 0,
  )
}
