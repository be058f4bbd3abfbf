/** What is written where nothing stood before: a value, a group of keys, or a list. */
export type Fragment = string | { readonly [key: string]: Fragment } | readonly Fragment[]

/** Quoting that the old value had, kept for the new one. */
export type Quoting = 'plain' | 'single' | 'double'

const isList = (f: Fragment): f is readonly Fragment[] => Array.isArray(f)

/** whether a text can stand in the file without quotes and read back as itself */
function plainWillDo(text: string, flow: boolean): boolean {
  if (text === '' || text !== text.trim()) return false
  if (/[\p{Cc}\u2028\u2029\uFEFF]/u.test(text)) return false
  if (/^[,[\]{}#&*!|>'"%@`]/.test(text) || /^[-?:](\s|$)/.test(text) || /^(---|\.\.\.)/.test(text))
    return false
  if (/:(\s|$)|\s#/.test(text)) return false
  return !flow || !/[,[\]{}]|:[,[\]{}]|^[-?:]/.test(text) || /^-[\d.][^,[\]{}]*$/.test(text)
}

/** A value as it must be written to read back as itself. */
export function scalarText(text: string, flow: boolean, quoting: Quoting = 'plain'): string {
  if (quoting === 'single' && !/[\p{Cc}\u2028\u2029\uFEFF]/u.test(text) && text.trim() === text)
    return `'${text.replaceAll("'", "''")}'`
  if (quoting === 'plain' && plainWillDo(text, flow)) return text
  return JSON.stringify(text).replace(
    /[\u007F-\u009F\u2028\u2029\uFEFF]/g,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}

/** The fragment on one line, for inside brackets. */
export function flowText(f: Fragment): string {
  if (typeof f === 'string') return scalarText(f, true)
  if (isList(f)) return `[${f.map(flowText).join(', ')}]`
  const inside = Object.entries(f).map(([key, value]) => `${key}: ${flowText(value)}`)
  return `{ ${inside.join(', ')} }`
}

/** The lines of `key: fragment`, without indentation of their own. */
export function keyLines(key: string, f: Fragment): string[] {
  if (typeof f === 'string') return [`${key}: ${scalarText(f, false)}`]
  // a place is written in brackets on the line of its key
  if (isList(f) && f.every((item) => typeof item === 'string')) return [`${key}: ${flowText(f)}`]
  const body = isList(f) ? f.flatMap(itemLines) : Object.entries(f).flatMap(([k, v]) => keyLines(k, v))
  return [`${key}:`, ...body.map((line) => `  ${line}`)]
}

/** The lines of a list item. */
export function itemLines(f: Fragment): string[] {
  if (typeof f === 'string') return [`- ${scalarText(f, false)}`]
  if (isList(f)) return [`- ${flowText(f)}`]
  const body = Object.entries(f).flatMap(([k, v]) => keyLines(k, v))
  return body.map((line, i) => (i === 0 ? `- ${line}` : `  ${line}`))
}
