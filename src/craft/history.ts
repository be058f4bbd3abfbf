/**
 * Undo and redo over the texts of a craft file: a row of states and the place in it. Pure values; every
 * function returns a new history. States before `at` can be undone to, those after it redone to.
 */
interface State {
  readonly text: string
  /** what led to this text, as shown beside Undo */
  readonly reason: string
  /** when, ms since 1970; handed in by the caller */
  readonly time: number
}

export interface History {
  readonly states: readonly State[]
  readonly at: number
}

/** most states kept; the oldest go first */
export const longest = 500

/** A history that begins with a text. */
export function beginHistory(text: string, reason: string, time: number): History {
  return { states: [{ text, reason, time }], at: 0 }
}

/** The text now. */
export function textNow(h: History): string {
  return h.states[h.at]!.text
}

/**
 * A new text. What was undone before is let go. An unchanged text changes nothing. With `joining`, a change
 * within that many ms of the last one with the same reason takes its place, so typing is one step.
 */
export function record(h: History, text: string, reason: string, time: number, joining = 0): History {
  if (text === textNow(h)) return h
  const now = h.states[h.at]!
  const joins =
    joining > 0 &&
    h.at > 0 &&
    now.reason === reason &&
    time - now.time <= joining &&
    h.at === h.states.length - 1
  const kept = h.states.slice(0, joins ? h.at : h.at + 1)
  const states = [...kept, { text, reason, time }].slice(-longest)
  return { states, at: states.length - 1 }
}

export function canUndo(h: History): boolean {
  return h.at > 0
}

export function canRedo(h: History): boolean {
  return h.at < h.states.length - 1
}

/** One state back; the same history at its beginning. */
export function undo(h: History): History {
  return canUndo(h) ? { ...h, at: h.at - 1 } : h
}

/** One state forward; the same history at its end. */
export function redo(h: History): History {
  return canRedo(h) ? { ...h, at: h.at + 1 } : h
}

/** What undo would take back, and redo bring again. */
export function undoReason(h: History): string | undefined {
  return canUndo(h) ? h.states[h.at]!.reason : undefined
}
export function redoReason(h: History): string | undefined {
  return h.states[h.at + 1]?.reason
}

/** For storage. */
export function historyToJson(h: History): string {
  return JSON.stringify({ history: 1, ...h })
}

/** What was stored, or undefined when it is not a history (damaged or from elsewhere). Never throws. */
export function historyFromJson(json: string): History | undefined {
  let got: unknown
  try {
    got = JSON.parse(json)
  } catch {
    return undefined
  }
  if (got === null || typeof got !== 'object') return undefined
  const { history, states, at } = got as { history?: unknown; states?: unknown; at?: unknown }
  if (history !== 1 || !Array.isArray(states) || !Number.isInteger(at)) return undefined
  const index = at as number
  if (index < 0 || index >= states.length || !states.every(isState)) return undefined
  return { states: states.map(({ text, reason, time }) => ({ text, reason, time })), at: index }
}

function isState(s: unknown): s is State {
  if (s === null || typeof s !== 'object') return false
  const { text, reason, time } = s as Record<string, unknown>
  return typeof text === 'string' && typeof reason === 'string' && typeof time === 'number'
}
