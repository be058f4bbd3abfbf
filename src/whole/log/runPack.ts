/**
 * A craft with its log and kept runs as one ZIP file (PKWARE APPNOTE 6.3.10), and back: craft and log as the plain files they are, each
 * run a folder of its own with what was heard as JSON and its sound as it came. Arrays of numbers stand in the JSON as base 64.
 */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { base64Of } from '../../drawing/png.ts'

export interface PackedRun {
  /** the app's own id of it */
  id: string
  name: string
  /** plain data: numbers, texts, lists, records, typed arrays; kept as it is */
  whole: unknown
  sound?: { bytes: Uint8Array; type: string }
}

export interface Pack {
  craft: { name: string; text: string }
  log: string
  runs: readonly PackedRun[]
}

/** most that is unpacked, bytes: some hours of sound */
const mostBytes = 2_000_000_000
const arrays = {
  Float32Array,
  Float64Array,
  Uint8Array,
  Int32Array,
  Uint32Array,
  Int16Array,
  Uint16Array,
  Int8Array,
  Uint8ClampedArray,
} as const
type ArrayName = keyof typeof arrays

/** letters that no file system minds */
const plainName = (name: string) =>
  name
    .replace(/[^\p{L}\p{N} ._-]+/gu, '_')
    .replace(/^\.+/, '')
    .slice(0, 80) || 'run'

/** The ZIP file; sound is stored as it is, as it does not shrink. */
export function packOf({ craft, log, runs }: Pack): Uint8Array {
  const files: Parameters<typeof zipSync>[0] = { [plainName(craft.name)]: strToU8(craft.text) }
  const base = plainName(craft.name).replace(/\.ya?ml$/i, '')
  if (log !== '') files[`${base}.log.yaml`] = strToU8(log)
  runs.forEach((run, i) => {
    const folder = `runs/${i + 1} ${plainName(run.name)}`
    const { id, name, sound } = run
    const told = { id, name, ...(sound ? { sound: sound.type } : {}), whole: run.whole }
    files[`${folder}/run.json`] = strToU8(JSON.stringify(told, withArrays))
    if (sound) files[`${folder}/sound`] = [sound.bytes, { level: 0 }]
  })
  return zipSync(files, { level: 6, mtime: new Date(2000, 0, 1) })
}

/** JSON has no typed arrays, no NaN and no endless numbers: each is written so that it comes back as it was. */
function withArrays(this: unknown, _key: string, value: unknown): unknown {
  if (ArrayBuffer.isView(value) && !(value instanceof DataView)) {
    const { buffer, byteOffset, byteLength } = value
    return {
      $array: value.constructor.name,
      base64: base64Of(new Uint8Array(buffer, byteOffset, byteLength)),
    }
  }
  if (typeof value === 'number' && !Number.isFinite(value)) return { $number: String(value) }
  return value
}

function fromArrays(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if ('$number' in value) return Number(value.$number)
  if (!('$array' in value && 'base64' in value)) return value
  const make = arrays[value.$array as ArrayName]
  if (make === undefined || typeof value.base64 !== 'string') return value
  const bytes = bytesOf(value.base64)
  if (bytes.length % make.BYTES_PER_ELEMENT !== 0) return value
  return new make(bytes.buffer)
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const places = new Map([...letters].map((l, i) => [l, i]))

/** Base 64 (RFC 4648 section 4) to bytes; letters that are none are passed over. */
function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  const bare = text.replace(/[^A-Za-z0-9+/]/g, '')
  const out = new Uint8Array(Math.floor((bare.length * 3) / 4))
  let at = 0
  let held = 0
  let bits = 0
  for (const letter of bare) {
    held = ((held << 6) | places.get(letter)!) & 0xffffff
    bits += 6
    if (bits >= 8) {
      bits -= 8
      out[at++] = (held >> bits) & 0xff
    }
  }
  return out
}

export interface Unpacked extends Partial<Pack> {
  runs: readonly PackedRun[]
  /** what in it could not be read */
  problems: readonly string[]
}

/** Reads a pack; what in it cannot be read is told and the rest is kept. Never throws. */
export function unpack(bytes: Uint8Array): Unpacked {
  const problems: string[] = []
  let files: Record<string, Uint8Array>
  let sum = 0
  try {
    files = unzipSync(bytes, {
      filter: ({ originalSize, name }) => {
        sum += originalSize
        if (sum <= mostBytes) return true
        problems.push(`${name} is too much: at most ${mostBytes / 1e9} GB are read`)
        return false
      },
    })
  } catch (error) {
    return { runs: [], problems: [`this is no ZIP file that can be read (${(error as Error).message})`] }
  }
  const names = Object.keys(files)
  const top = names.filter((n) => !n.includes('/') && /\.ya?ml$/i.test(n))
  const logName = top.find((n) => /\.log\.ya?ml$/i.test(n))
  const craftName = top.find((n) => n !== logName)
  if (!craftName) problems.push('no craft file is in it')
  const runs = names
    .filter((n) => /^runs\/[^/]+\/run\.json$/.test(n))
    .sort((a, b) => Number.parseInt(a.slice(5), 10) - Number.parseInt(b.slice(5), 10))
    .flatMap((name) => runIn(files, name, problems))
  return {
    ...(craftName ? { craft: { name: craftName, text: strFromU8(files[craftName]!) } } : {}),
    ...(logName ? { log: strFromU8(files[logName]!) } : {}),
    runs,
    problems,
  }
}

function runIn(files: Record<string, Uint8Array>, name: string, problems: string[]): PackedRun[] {
  try {
    const told = JSON.parse(strFromU8(files[name]!), fromArrays) as Record<string, unknown>
    if (typeof told['id'] !== 'string' || typeof told['name'] !== 'string')
      throw new Error('no id or no name')
    const bytes = files[name.replace(/run\.json$/, 'sound')]
    const type = typeof told['sound'] === 'string' ? told['sound'] : ''
    return [
      {
        id: told['id'],
        name: told['name'],
        whole: told['whole'],
        ...(bytes ? { sound: { bytes, type } } : {}),
      },
    ]
  } catch (error) {
    problems.push(`${name} cannot be read (${(error as Error).message}); the rest is`)
    return []
  }
}

/** Two logs as one: what the other holds beyond this one's own blocks, behind them. */
export function mergedLogs(own: string, other: string): string {
  if (other === '' || own === other || own.includes(other)) return own
  if (own === '' || other.includes(own)) return other
  const blocks = (text: string) => text.split(/(?=^-\s)/m)
  const known = new Set(blocks(own).map((b) => b.trim()))
  const [, ...theirs] = /^-\s/.test(other) ? ['', ...blocks(other)] : blocks(other)
  const more = theirs.filter((b) => !known.has(b.trim()))
  const base = own.endsWith('\n') ? own : `${own}\n`
  return more.reduce((text, block) => `${text}\n${block.trimEnd()}\n`, base)
}
