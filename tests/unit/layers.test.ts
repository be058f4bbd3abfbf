import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { expect, test } from 'vitest'

/**
 * The layers of the project, lowest first. A folder may import from its own folder and from any
 * layer below; folders that share a layer never import each other unless they are listed as free.
 */
const layers: readonly (readonly string[])[] = [
  ['units', 'numerics', 'answers'],
  ['craft'],
  ['gas', 'fluid', 'solid', 'drawing'],
  ['engine', 'exhaust', 'jet', 'hull', 'strength', 'fuel', 'making', 'sound'],
  ['balance'],
  ['faults'],
  ['registry'],
  ['book', 'jobs'],
  ['web', 'cli'],
]
/** the tools layer may also lean on itself */
const freeLayers = new Set([0])
/** physics and drawing know nothing of the craft */
const craftBlind = new Set(['gas', 'fluid', 'solid', 'drawing'])

const root = resolve(import.meta.dirname, '../../src')
const layerOf = new Map(layers.flatMap((names, i) => names.map((name) => [name, i] as const)))

function sources(dir: string): string[] {
  return readdirSync(dir, { withFileTypes: true }).flatMap((e) =>
    e.isDirectory() ? sources(join(dir, e.name)) : /\.tsx?$/.test(e.name) ? [join(dir, e.name)] : [],
  )
}

/** every module a source file names, statically or dynamically */
function importsOf(text: string): string[] {
  const found: string[] = []
  const pattern =
    /(?:^|[\n;])\s*(?:import|export)\b[^'"`;]*?['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]|new URL\(\s*['"]([^'"]+)['"]/g
  for (const m of text.matchAll(pattern)) found.push((m[1] ?? m[2] ?? m[3])!)
  return found
}

function breaches(file: string, text: string): string[] {
  const own = relative(root, file).split('/')[0]!
  const level = layerOf.get(own)
  const at = relative(root, file)
  // src/index.ts is the library's door and may name any layer but the faces
  if (own === 'index.ts') return importsOf(text).filter((i) => /^\.\/(web|cli)\//.test(i))
  if (level === undefined) return [`${at}: folder "${own}" is in no layer`]
  const bad: string[] = []
  for (const name of importsOf(text)) {
    if (!name.startsWith('.')) continue
    const target = relative(root, resolve(dirname(file), name)).split('/')[0]!
    if (target === '..' || target === own) continue
    const below = layerOf.get(target)
    if (below === undefined) bad.push(`${at}: imports ${name}, which is in no layer`)
    else if (below > level) bad.push(`${at}: imports upwards from ${target}`)
    else if (below === level && !freeLayers.has(level)) bad.push(`${at}: imports its neighbour ${target}`)
    else if (target === 'craft' && craftBlind.has(own))
      bad.push(`${at}: ${own} must know nothing of the craft`)
  }
  return bad
}

test('imports point down the layers only', () => {
  const files = sources(root).filter((f) => !/\.test\.tsx?$/.test(f))
  expect(files.length).toBeGreaterThan(10)
  expect(files.flatMap((f) => breaches(f, readFileSync(f, 'utf8')))).toEqual([])
})

test('a planted breach of each kind is found', () => {
  const seen = (at: string, text: string) => breaches(join(root, at), text).length
  expect(seen('jet/a.ts', "import { x } from '../hull/b.ts'")).toBe(1)
  expect(seen('jet/a.ts', "export * from '../balance/b.ts'")).toBe(1)
  expect(seen('gas/a.ts', "import type { Craft } from '../craft/b.ts'")).toBe(1)
  expect(seen('web/a.ts', "const x = await import('../cli/b.ts')")).toBe(1)
  expect(seen('balance/a.ts', "import { x } from '../jet/b.ts'")).toBe(0)
})
