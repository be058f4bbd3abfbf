import { applyPatch, invertPatch, isEmptyPatch, type Patch, patchBetween } from './patch.ts'

/** A value being tried: SI number or word, as typed, and what the file says now. */
export interface Tried {
  path: string
  value: number | string
  text: string
  was: string
}

/** One undoable step: the change of the text and of what was being tried. */
interface Step {
  label: string
  at: number
  /** steps with the same key that follow each other quickly become one */
  merge?: string
  patch: Patch
  triedBefore: readonly Tried[]
  triedAfter: readonly Tried[]
}

/** Everything that is kept of one craft. The text is the truth; `goodText` is the last text that could be read. */
export interface Work {
  id: string
  fileName: string
  text: string
  goodText: string
  tried: readonly Tried[]
  past: readonly Step[]
  future: readonly Step[]
}

/** steps kept; older ones fall off the end */
const mostSteps = 200
/** milliseconds between two steps of one key that still count as one */
const mergeWithin = 1500

/** A craft just opened, with nothing tried and no history. */
export function newWork(id: string, fileName: string, text: string): Work {
  return { id, fileName, text, goodText: text, tried: [], past: [], future: [] }
}

interface Change {
  text?: string
  tried?: readonly Tried[]
  label: string
  merge?: string
}

/** Work after a change made at `now` (ms); the same object when nothing changed. */
export function change(
  work: Work,
  { text = work.text, tried = work.tried, label, merge }: Change,
  now: number,
): Work {
  const patch = patchBetween(work.text, text)
  if (isEmptyPatch(patch) && sameTried(work.tried, tried)) return work
  const last = work.past.at(-1)
  const joins =
    last !== undefined &&
    merge !== undefined &&
    last.merge === merge &&
    now - last.at < mergeWithin &&
    work.future.length === 0
  const step: Step = joins
    ? {
        ...last,
        at: now,
        patch: patchBetween(applyPatch(work.text, invertPatch(last.patch)), text),
        triedAfter: tried,
      }
    : {
        label,
        at: now,
        ...(merge === undefined ? {} : { merge }),
        patch,
        triedBefore: work.tried,
        triedAfter: tried,
      }
  const past = joins ? work.past.slice(0, -1) : work.past
  return { ...work, text, tried, past: [...past, step].slice(-mostSteps), future: [] }
}

/** Work with its last step taken back; the same object when there is none. */
export function undo(work: Work): Work {
  const step = work.past.at(-1)
  if (!step) return work
  return {
    ...work,
    text: applyPatch(work.text, invertPatch(step.patch)),
    tried: step.triedBefore,
    past: work.past.slice(0, -1),
    future: [...work.future, step],
  }
}

/** Work with the step last taken back done again; the same object when there is none. */
export function redo(work: Work): Work {
  const step = work.future.at(-1)
  if (!step) return work
  return {
    ...work,
    text: applyPatch(work.text, step.patch),
    tried: step.triedAfter,
    // a step done again never joins the next one typed
    past: [...work.past, { ...step, at: 0 }],
    future: work.future.slice(0, -1),
  }
}

/** The tried list with `one` put in, in place of an earlier trial of the same path. */
export function withTried(tried: readonly Tried[], one: Tried): Tried[] {
  return tried.some((t) => t.path === one.path)
    ? tried.map((t) => (t.path === one.path ? { ...one, was: t.was } : t))
    : [...tried, one]
}

/** The tried list without `path`. */
export function withoutTried(tried: readonly Tried[], path: string): Tried[] {
  return tried.filter((t) => t.path !== path)
}

function sameTried(a: readonly Tried[], b: readonly Tried[]): boolean {
  return (
    a === b ||
    (a.length === b.length &&
      a.every((t, i) => t.path === b[i]!.path && t.value === b[i]!.value && t.text === b[i]!.text))
  )
}
