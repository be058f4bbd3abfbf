import { type Document, isAlias, isMap, isScalar, parseDocument, visit, type YAMLError } from 'yaml'
import { keysCalled } from '../base/units/near.ts'
import { contradictions } from './contradictions.ts'
import { fillDefaults, type Tree } from './defaults.ts'
import { blockedBy } from './guard.ts'
import { migrate } from './migrate.ts'
import { listFields } from './paths.ts'
import { lineFinder, type Problem, quoted } from './problem.ts'
import { type KeyHome, readFields, startOf, type Walk } from './reader.ts'
import { type Craft, craftFields, currentVersion, versionKey } from './schema/craftSchema.ts'
import { rememberDerived } from './whatIf.ts'

/** The text a craft was read from and where each value stands in it. */
export interface CraftSource {
  readonly file: string
  /** exactly as handed in */
  readonly text: string
  /** the same after migration from an older version; equal to `text` when there was nothing to do */
  readonly current: string
  /** version the file was written in; 0 when it does not say */
  readonly version: number
  /** line and column of a path, or of the nearest group around it */
  readonly placeOf: (path: string) => { line: number; column: number }
  /** paths of words and flags that were left out and filled in */
  readonly assumedWords: readonly string[]
}

export interface CraftReading {
  /** absent when there is any error */
  craft?: Craft
  problems: Problem[]
  source: CraftSource
}

const limit = 200

/** Reads a craft file. Never throws; `craft` is absent when any problem is an error. */
export function readCraft(text: string, file = 'craft.yaml'): CraftReading {
  const problems: Problem[] = []
  const walk: Walk = { places: new Map(), waiting: [], assumedWords: [], homeOf, complain: () => {} }
  let find = lineFinder(text.slice(0, 2_000_000))
  const add = (
    offset: number,
    path: string,
    found: string,
    expected: string,
    says: string,
    severity: 'error' | 'warning' = 'error',
  ) => {
    if (problems.length < limit)
      problems.push({ file, ...find(offset), path, found, expected, says, severity })
  }
  walk.complain = add
  let version = 0
  let current = text
  let craft: Craft | undefined
  try {
    const opened = open(text, add)
    if (opened) {
      version = opened.version
      current = opened.text
      if (current !== text) find = lineFinder(current)
      craft = build(opened.document, walk, add, problems)
    }
  } catch (e) {
    // the guard keeps known hazards out; whatever is left must still end as a message
    const says = `the file could not be read: ${quoted(e instanceof Error ? e.message : String(e))}`
    add(0, '', 'a file the reader cannot handle', 'a craft file', says)
  }
  problems.sort((a, b) => a.line - b.line || a.column - b.column)
  const { places } = walk
  const placeOf = (path: string) => {
    for (let p = path; p !== ''; p = p.slice(0, Math.max(0, p.lastIndexOf('.')))) {
      const at = places.get(p)
      if (at !== undefined) return find(at)
    }
    return { line: 1, column: 1 }
  }
  const source = { file, text, current, version, placeOf, assumedWords: walk.assumedWords }
  const failed = problems.some((p) => p.severity === 'error')
  return failed || !craft ? { problems, source } : { craft, problems, source }
}

let everyField: ReturnType<typeof listFields> | undefined

/**
 * Where a key of the craft file stands that was met where it cannot; also where it stands by another name ("impeller": "rotor" of
 * jet). `known` is true for every key there is, `says` left out where it stands in too many places to be told.
 */
function homeOf(key: string, path: string): KeyHome {
  const homes = homesOf(key, path)
  const known = homes.length > 0
  if (known && homes.length <= 3) return { known, says: `it belongs to ${homes.join(', ')}` }
  for (const name of keysCalled(key) ?? []) {
    const called = homesOf(name, path)
    if (called.length > 0 && called.length <= 3)
      return { known, says: `what is meant may be "${name}" of ${called.join(', ')}` }
  }
  return { known }
}

/** The groups that have a key, itself a value or a group. */
function homesOf(key: string, path: string): string[] {
  const here = path.replaceAll(/\.\d+/g, '.*')
  const homes = new Set<string>()
  everyField ??= listFields()
  for (const field of everyField) {
    const parts = field.path.split('.')
    const at = parts.indexOf(key)
    if (at < 0) continue
    const group = parts.slice(0, at).join('.')
    if (group === here && field.variant) homes.add(`kind ${field.variant}`)
    else homes.add(group === '' ? 'the file itself' : group.replaceAll('.*', ''))
  }
  return [...homes]
}

type Add = (
  offset: number,
  path: string,
  found: string,
  expected: string,
  says: string,
  severity?: 'error' | 'warning',
) => void

interface Opened {
  document: Document
  text: string
  version: number
}

/** text -> parsed document of the current version, or undefined after complaints */
function open(text: string, add: Add): Opened | undefined {
  const blocked = blockedBy(text)
  if (blocked) {
    add(
      blocked.offset,
      '',
      blocked.found,
      blocked.expected,
      `found ${blocked.found}; expected ${blocked.expected}`,
    )
    return undefined
  }
  const document = parse(text, add)
  if (!document) return undefined
  const version = versionOf(document, add)
  if (version === undefined) return undefined
  if (version === currentVersion) return { document, text, version }
  const newer = migrate(text, version)
  const again = parse(newer, add)
  return again && { document: again, text: newer, version }
}

/** YAML with every scalar kept as its text: no word or number is given a meaning by the parser */
function parseYaml(text: string): Document {
  // the parser compares every key with every other; the reader finds keys given twice by itself, in one pass
  return parseDocument(text, {
    schema: 'failsafe',
    prettyErrors: false,
    strict: true,
    uniqueKeys: false,
    logLevel: 'error',
  })
}

function parse(text: string, add: Add): Document | undefined {
  const document = parseYaml(text)
  // one fault of form makes the parser trip over all that follows it: the first is the one to mend
  const first = document.errors.reduce<YAMLError | undefined>(
    (a, e) => (a && a.pos[0] <= e.pos[0] ? a : e),
    undefined,
  )
  if (first) addYamlError(first, document, text, add)
  if (document.errors.length > 0) return undefined
  const expected = 'keys and values, "wakewright: 1" first'
  const directive = /^\uFEFF?%/m.exec(text)?.index
  if (directive !== undefined && directive <= startOf(document.contents, 0)) {
    const found = 'a line beginning with %'
    add(directive, '', found, expected, `found ${found}; expected ${expected}`)
    return undefined
  }
  if (document.contents === null) {
    add(0, '', 'an empty file', expected, `the file is empty; expected ${expected}`)
    return undefined
  }
  if (!isMap(document.contents)) {
    const found = isScalar(document.contents) ? 'plain text' : 'a list'
    add(startOf(document.contents, 0), '', found, expected, `the file is ${found}; expected ${expected}`)
    return undefined
  }
  return refuseShorthand(document, add) ? undefined : document
}

/** anchors, aliases and tags would make a value stand elsewhere than where it is read: write it out */
function refuseShorthand(document: Document, add: Add): boolean {
  let refused = false
  const expected = 'the value written out'
  const refuse = (node: object, found: string) => {
    refused = true
    add(
      startOf(node, 0),
      '',
      found,
      expected,
      `found ${found}, which a craft file does not use; expected ${expected}`,
    )
  }
  visit(document, {
    Node(_, node) {
      if (isAlias(node)) refuse(node, `the alias ${quoted(`*${node.source}`)}`)
      else if (node.anchor) refuse(node, `the anchor ${quoted(`&${node.anchor}`)}`)
      else if (node.tag) refuse(node, `the tag ${quoted(node.tag)}`)
    },
  })
  return refused
}

const yamlSays: Readonly<Record<string, [found: string, expected: string]>> = {
  MULTIPLE_DOCS: ['a second document after ---', 'one craft in a file'],
  TAB_AS_INDENT: ['a tab before the text', 'spaces for indentation'],
  BAD_INDENT: ['a line that starts at the wrong column', 'the same indentation for all keys of a group'],
  MULTILINE_IMPLICIT_KEY: ['words without a colon after them', 'key: value'],
  BLOCK_AS_IMPLICIT_KEY: ['a second ": " in one line', 'one key and value a line, or quotes round the value'],
  MISSING_CHAR: ['a quote, bracket, comma or space that is missing', 'every quote and bracket closed'],
  BAD_SCALAR_START: ['a value that begins with a reserved character', 'quotes round the value'],
  UNEXPECTED_TOKEN: ['something that does not belong here', 'key: value'],
}

/** the last quote or bracket that was opened before `pos` and is not closed */
function stillOpen(document: Document, text: string, pos: number): number | undefined {
  let at: number | undefined
  visit(document, {
    Node(_, node) {
      if (isAlias(node) || !node.range || node.range[0] >= pos) return
      const [from, to] = node.range
      const opener = text[from]
      const closed =
        to - from > 1 && text[to - 1] === { '"': '"', "'": "'", '[': ']', '{': '}' }[opener ?? '']
      if (opener !== undefined && `"'[{`.includes(opener) && !closed && (at === undefined || from > at))
        at = from
    },
  })
  return at
}

function addYamlError(e: YAMLError, document: Document, text: string, add: Add): void {
  const unclosed = e.code === 'MISSING_CHAR' || (e.code === 'BAD_INDENT' && e.message.startsWith('Flow'))
  const opened = unclosed ? stillOpen(document, text, e.pos[0]) : undefined
  const offset = opened ?? e.pos[0]
  const piece = text
    .slice(offset, offset + 200)
    .split(/\r?\n/, 1)[0]!
    .trim()
  const [found, expected] =
    opened !== undefined
      ? ['a quote or bracket that is never closed', 'every quote and bracket closed']
      : e.code === 'BLOCK_AS_IMPLICIT_KEY' && !/:(\s|$)/.test(piece)
        ? ['a value with more keys or lines under it', 'either a value or, on lines of their own, keys']
        : (yamlSays[e.code] ?? [e.message, 'key: value'])
  const near = piece === '' ? '' : ` at ${quoted(piece)}`
  add(offset, '', found, expected, `found ${found}${near}; expected ${expected}`)
}

function versionOf(document: Document, add: Add): number | undefined {
  const pair = isMap(document.contents)
    ? document.contents.items.find((p) => isScalar(p.key) && p.key.value === versionKey)
    : undefined
  const expected = `"${versionKey}: ${currentVersion}" at the top`
  if (!pair) {
    add(0, versionKey, 'no version', expected, `the file does not say its version; expected ${expected}`)
    return undefined
  }
  const word = isScalar(pair.value) ? String(pair.value.value) : ''
  const version = /^[1-9]\d{0,5}$/.test(word) ? Number(word) : undefined
  const offset = startOf(pair.value, 0)
  if (version === undefined) {
    add(offset, versionKey, quoted(word), expected, `${versionKey} is ${quoted(word)}; expected ${expected}`)
    return undefined
  }
  if (version > currentVersion) {
    const says = `the file is of version ${version}, newer than this program knows (${currentVersion}); it was left as it is`
    add(offset, versionKey, `version ${version}`, `version ${currentVersion} or older`, says)
    return undefined
  }
  return version
}

function build(document: Document, walk: Walk, add: Add, problems: readonly Problem[]): Craft | undefined {
  const root = { path: '', segments: [], offset: startOf(document.contents, 0) }
  const tree = readFields(walk, craftFields, document.contents, root, {
    [versionKey]: currentVersion,
  }) as Tree
  if (problems.length > 0) return undefined
  delete tree[versionKey]
  const { derived, left } = fillDefaults(tree, walk.waiting)
  for (const d of left) {
    const says = `${d.path} is missing and has no default here`
    add(nearestPlace(walk.places, d.path) ?? root.offset, d.path, 'nothing', 'a value', says)
  }
  if (left.length > 0) return undefined
  const craft = tree as unknown as Craft
  rememberDerived(craft, derived)
  for (const c of contradictions(craft)) {
    const offset = nearestPlace(walk.places, c.path) ?? root.offset
    add(offset, c.path, c.found, c.expected, `${c.path} is ${c.found}; expected ${c.expected}`, c.severity)
  }
  return craft
}

function nearestPlace(places: ReadonlyMap<string, number>, path: string): number | undefined {
  for (let p = path; p !== ''; p = p.slice(0, Math.max(0, p.lastIndexOf('.')))) {
    const at = places.get(p)
    if (at !== undefined) return at
  }
  return undefined
}
