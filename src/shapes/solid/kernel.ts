/**
 * The geometry kernel, loaded once and only by who builds a solid: half a megabyte that no other page pays for. Every solid made on a workbench
 * is let go with it, for the kernel's memory is not collected.
 */
import type { CrossSection, Manifold, ManifoldToplevel } from 'manifold-3d'
import type { SolidMesh } from '../../base/answers/madePart.ts'

export type Solid = Manifold
/** rings of points, the outer one anticlockwise, holes clockwise; m */
export type Rings = readonly (readonly (readonly [number, number])[])[]

let code: Uint8Array | undefined
let loaded: Promise<ManifoldToplevel> | undefined

/** Hands in the kernel's code, for a face that packs its files so that the kernel would not find it; before the first solid. */
export function kernelFrom(bytes: Uint8Array): void {
  code = bytes
}

/** The kernel, loaded at the first call. */
function kernel(): Promise<ManifoldToplevel> {
  loaded ??= (async () => {
    const { default: load } = await import('manifold-3d')
    // the types know of an address alone; the code itself is taken too
    const lib = await load(
      code ? ({ wasmBinary: code } as unknown as { locateFile: () => string }) : undefined,
    )
    lib.setup()
    return lib
  })()
  return loaded
}

/** Facets round a circle of radius `r` so that none is further than `chord` inside it; a multiple of four, 12 to 720. */
export function facetsFor(r: number, chord: number): number {
  const n = chord < r ? Math.PI / Math.acos(1 - chord / r) : 12
  return 4 * Math.ceil(Math.min(720, Math.max(12, n)) / 4)
}

/** Tools that make and join solids; lengths m, angles rad, axis z where a solid has one. */
export interface Workbench {
  /** how far a facet may stay inside the curve it stands for, m */
  chord: number
  /** turned from a half section of radii and heights */
  lathe(half: readonly (readonly [r: number, z: number])[], hole?: boolean): Solid
  /** upright, from `z` up */
  rod(radius: number, height: number, z?: number): Solid
  /** the same to cut with: no facet leaves less room than the circle asked for */
  bore(radius: number, height: number, z?: number): Solid
  /** corner to corner */
  box(low: readonly [number, number, number], high: readonly [number, number, number]): Solid
  /** outline pulled up */
  pulled(rings: Rings, height: number, z?: number): Solid
  /** a closed surface made elsewhere; throws a RangeError where it is none */
  given(mesh: SolidMesh): Solid
  join(...solids: readonly Solid[]): Solid
  cut(from: Solid, ...tools: readonly Solid[]): Solid
  common(a: Solid, b: Solid): Solid
  moved(solid: Solid, x: number, y: number, z: number): Solid
  /** about x, then y, then z */
  turned(solid: Solid, x: number, y: number, z: number): Solid
  mirrored(solid: Solid, normal: readonly [number, number, number]): Solid
  /** outlines of a level cut at height z */
  level(solid: Solid, z: number): Rings
  /** `count` of it round the axis */
  round(solid: Solid, count: number): Solid
  /** outlines moved outwards by `by`, inwards where negative */
  widened(rings: Rings, by: number): Rings
  /** in two at a height: below, above */
  parted(solid: Solid, z: number): readonly [Solid, Solid]
  mesh(solid: Solid): SolidMesh
}

const degrees = 180 / Math.PI

/** Runs `work` with a workbench and lets go of all that was made on it. */
export async function atWorkbench<T>(chord: number, work: (bench: Workbench) => T | Promise<T>): Promise<T> {
  if (!(chord >= 1e-6 && chord <= 5e-3))
    throw new RangeError(`chord: ${chord} m is outside 0.000001 to 0.005 m`)
  const lib = await kernel()
  const made: (Manifold | CrossSection)[] = []
  try {
    return await work(toolsOf(lib, chord, made))
  } finally {
    for (const m of made) m.delete()
  }
}

function toolsOf(lib: ManifoldToplevel, chord: number, made: (Manifold | CrossSection)[]): Workbench {
  const { Manifold: M, CrossSection: C } = lib
  const keep = <S extends Manifold | CrossSection>(s: S): S => {
    made.push(s)
    return s
  }
  const copy = (rings: Rings) => rings.map((ring) => ring.map(([x, y]): [number, number] => [x, y]))
  const lathe = (half: readonly (readonly [number, number])[], hole = false) => {
    const n = facetsFor(Math.max(...half.map(([r]) => r)), chord)
    const wide = hole ? 1 / Math.cos(Math.PI / n) : 1
    const section = keep(new C(copy([half.map(([r, z]) => [r * wide, z])]), 'NonZero'))
    return keep(section.revolve(n))
  }
  const upright = (radius: number, height: number, z: number) => [
    [0, z] as const,
    [radius, z] as const,
    [radius, z + height] as const,
    [0, z + height] as const,
  ]
  const turned = (s: Solid, x: number, y: number, z: number) =>
    keep(s.rotate([x * degrees, y * degrees, z * degrees]))
  const join = (...solids: readonly Solid[]) => keep(M.union([...solids]))
  return {
    chord,
    lathe,
    rod: (radius, height, z = 0) => lathe(upright(radius, height, z)),
    bore: (radius, height, z = 0) => lathe(upright(radius, height, z), true),
    box: (low, high) => {
      const cube = keep(M.cube([high[0] - low[0], high[1] - low[1], high[2] - low[2]]))
      return keep(cube.translate([...low]))
    },
    pulled: (rings, height, z = 0) => {
      const section = keep(new C(copy(rings), 'EvenOdd'))
      return keep(keep(section.extrude(height)).translate([0, 0, z]))
    },
    given: (mesh) => keep(solidOf(lib, mesh)),
    join,
    cut: (from, ...tools) => keep(from.subtract(join(...tools))),
    common: (a, b) => keep(a.intersect(b)),
    moved: (s, x, y, z) => keep(s.translate([x, y, z])),
    turned,
    mirrored: (s, normal) => keep(s.mirror([...normal])),
    level: (s, z) => keep(s.slice(z)).toPolygons(),
    round: (s, count) =>
      join(...Array.from({ length: count }, (_, i) => turned(s, 0, 0, (2 * Math.PI * i) / count))),
    widened: (rings, by) => {
      const section = keep(new C(copy(rings), 'EvenOdd'))
      return keep(section.offset(by, 'Round', 2, 24)).toPolygons()
    },
    parted: (s, z) => {
      const [above, below] = s.splitByPlane([0, 0, 1], z)
      return [keep(below), keep(above)]
    },
    mesh: meshOf,
  }
}

function solidOf(lib: ManifoldToplevel, { corners, triangles }: SolidMesh): Manifold {
  const mesh = new lib.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(corners),
    triVerts: Uint32Array.from(triangles),
  })
  try {
    return new lib.Manifold(mesh)
  } catch (error) {
    throw new RangeError(`mesh: not a closed surface (${error instanceof Error ? error.message : error})`)
  }
}

/** The surface of a solid as plain data; RangeError where nothing is left of it or the kernel found it broken. */
function meshOf(solid: Manifold): SolidMesh {
  const status = solid.status()
  if (status !== 'NoError') throw new RangeError(`solid: the kernel says ${status}`)
  if (solid.isEmpty()) throw new RangeError('solid: nothing is left of it')
  const { vertProperties, triVerts, numProp } = solid.getMesh()
  const count = vertProperties.length / numProp
  const corners = new Float64Array(3 * count)
  for (let i = 0; i < count; i++)
    for (let k = 0; k < 3; k++) corners[3 * i + k] = vertProperties[numProp * i + k]!
  return { corners, triangles: Uint32Array.from(triVerts) }
}
