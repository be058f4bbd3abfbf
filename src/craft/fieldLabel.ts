/** What a builder calls a value of the craft file. */
import { valueAt } from './defaults.ts'
import { camel } from './fields.ts'
import { fieldAt } from './paths.ts'
import type { Craft } from './schema/craftSchema.ts'

/**
 * A builder's words for a path, with what it is part of: "Impeller pitch", "Engine 2 power at", "Name". With the craft, what has a
 * name of its own goes by it: "knee pads, skin".
 */
export function labelOf(path: string, craft?: Craft): string {
  const axis = /^(.*)\.(\d+)$/.exec(path)
  const place = axis && fieldAt(axis[1]!)
  if (place?.type === 'point') return `${labelOf(axis![1]!, craft)}, ${place.axes[Number(axis![2])]}`
  const within = /^(.*\.\d+|[^.]+\.\d+)\.(.+)$/.exec(path)
  const called = within && craft && valueAt(craft, [...within[1]!.split('.'), 'name'].map(camel))
  if (typeof called === 'string' && called !== '' && within![2] !== 'name') {
    const rest = within![2]!
    const part = fieldAt(path.slice(0, path.lastIndexOf('.')))?.label
    const word = (fieldAt(path)?.label ?? rest).toLowerCase()
    return `${called}, ${rest.includes('.') && part ? `${part.toLowerCase()} ${word}` : word}`
  }
  const own = fieldAt(path)?.label ?? path
  const item = /^(?:.*\.)?([a-z ]+)\.(\d+)\.[^.]+$/.exec(path)
  if (item) return `${upper(item[1]!.replace(/s$/, ''))} ${Number(item[2]) + 1} ${own.toLowerCase()}`
  const owner = fieldAt(path.slice(0, Math.max(0, path.lastIndexOf('.'))))?.label
  return owner ? `${owner} ${own.toLowerCase()}` : own
}

const upper = (word: string) => word.charAt(0).toUpperCase() + word.slice(1)
