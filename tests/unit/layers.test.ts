import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { expect, test } from 'vitest'

/**
 * The layers of the project, lowest first; CONTRIBUTING.md draws them. A room may import from its own layer's own room and from any
 * layer below. Rooms that share a layer are neighbours: they never import each other, except the tools of `base`, which are free.
 */
const layers: readonly (readonly string[])[] = [
  ['base/units'],
  ['base/answers', 'base/numerics'],
  ['craft'],
  ['physics/gas', 'physics/fluid', 'physics/solid', 'drawing', 'shapes'],
  ['hull/lines'],
  ['hull/mesh'],
  ['hull/afloat'],
  ['hull/aboard', 'hull/site'],
  ['trades/trade'],
  ['trades'],
  ['whole'],
  ['book'],
  ['jobs'],
  ['faces'],
]
/** layers whose folders are rooms of their own: two of them never import each other */
const apart = ['trades', 'faces']
/** rooms of one layer that may lean on each other */
const free = new Set(['base/answers', 'base/numerics'])
/** physics, drawing and shapes know nothing of the craft */
const craftBlind = /^(physics|drawing|shapes)\b/

const root = resolve(import.meta.dirname, '../../src')
const names = layers.flat()

/** The layer of a file under src and the room in it; undefined in no layer. */
function placeOf(at: string): { level: number; room: string } | undefined {
  const name = names.find((n) => at.startsWith(`${n}/`) || at === `${n}.ts`)
  if (name === undefined) return undefined
  const level = layers.findIndex((l) => l.includes(name))
  return { level, room: apart.includes(name) ? at.split('/').slice(0, 2).join('/') : name }
}

function sources(dir: string): string[] {
  return readdirSync(dir, { withFileTypes: true }).flatMap((e) =>
    e.isDirectory() ? sources(join(dir, e.name)) : /\.tsx?$/.test(e.name) ? [join(dir, e.name)] : [],
  )
}

/** every module a source file names, statically or dynamically; `type` where it is taken for types alone */
function importsOf(text: string): { name: string; type: boolean }[] {
  const pattern =
    /(?:^|[\n;])\s*(import|export)\b([^'"`;]*?)['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]|new URL\(\s*['"]([^'"]+)['"]/g
  return [...text.matchAll(pattern)].map((m) => ({
    name: (m[3] ?? m[4] ?? m[5])!,
    type: /^\s*type\b/.test(m[2] ?? ''),
  }))
}

function breaches(file: string, text: string): string[] {
  const at = relative(root, file)
  // src/index.ts is the library's door and may name any layer but the faces
  if (at === 'index.ts') return importsOf(text).flatMap((i) => (/^\.\/faces\//.test(i.name) ? [i.name] : []))
  const own = placeOf(at)
  if (!own) return [`${at}: is in no layer`]
  const bad: string[] = []
  for (const { name } of importsOf(text)) {
    if (!/^\.{1,2}\//.test(name)) continue
    const target = relative(root, resolve(dirname(file), name))
    if (target.startsWith('..')) continue
    const its = placeOf(target)
    if (!its) bad.push(`${at}: imports ${name}, which is in no layer`)
    else if (its.room === own.room) continue
    else if (its.level > own.level) bad.push(`${at}: imports upwards from ${its.room}`)
    else if (its.level === own.level && !(free.has(own.room) && free.has(its.room)))
      bad.push(`${at}: imports its neighbour ${its.room}`)
    else if (its.room === 'craft' && craftBlind.test(own.room))
      bad.push(`${at}: ${own.room} must know nothing of the craft`)
  }
  return bad
}

/** files that import each other in a ring, by value; types alone tie nothing when the program runs */
function rings(files: ReadonlyMap<string, string>): string[] {
  const to = new Map(
    [...files].map(([f, text]) => [
      f,
      importsOf(text)
        .filter((i) => !i.type && /^\.{1,2}\//.test(i.name))
        .map((i) => resolve(dirname(f), i.name))
        .filter((t) => files.has(t)),
    ]),
  )
  const state = new Map<string, 'open' | 'done'>()
  const found: string[] = []
  const walk = (f: string, path: readonly string[]) => {
    if (state.get(f) === 'done') return
    if (state.get(f) === 'open') {
      found.push([...path.slice(path.indexOf(f)), f].map((p) => relative(root, p)).join(' > '))
      return
    }
    state.set(f, 'open')
    for (const t of to.get(f) ?? []) walk(t, [...path, f])
    state.set(f, 'done')
  }
  for (const f of files.keys()) walk(f, [])
  return found
}

const read = () =>
  new Map(
    sources(root)
      .filter((f) => !/\.(test|testkit)\.tsx?$/.test(f))
      .map((f) => [f, readFileSync(f, 'utf8')] as const),
  )

test('imports point down the layers only', () => {
  const files = read()
  expect(files.size).toBeGreaterThan(400)
  expect([...files].flatMap(([f, text]) => breaches(f, text))).toEqual([])
})

test('no files import each other in a ring by value', () => {
  expect(rings(read())).toEqual([])
})

test('a planted breach of each kind is found', () => {
  const seen = (at: string, text: string) => breaches(join(root, at), text).length
  expect(seen('trades/jet/a.ts', "import { x } from '../drag/b.ts'")).toBe(1)
  expect(seen('trades/jet/a.ts', "export * from '../../whole/b.ts'")).toBe(1)
  expect(seen('hull/lines/a.ts', "import { x } from '../aboard/b.ts'")).toBe(1)
  expect(seen('physics/gas/a.ts', "import type { Craft } from '../../craft/b.ts'")).toBe(1)
  expect(seen('faces/web/a.ts', "const x = await import('../cli/b.ts')")).toBe(1)
  expect(seen('units/a.ts', '')).toBe(1)
  expect(seen('whole/push/a.ts', "import { x } from '../../trades/jet/b.ts'")).toBe(0)
  const ring = new Map([
    [join(root, 'a.ts'), "import { b } from './b.ts'"],
    [join(root, 'b.ts'), "import { a } from './a.ts'"],
  ])
  expect(rings(ring)).toHaveLength(1)
  expect(rings(new Map([...ring, [join(root, 'b.ts'), "import type { a } from './a.ts'"]]))).toEqual([])
})
