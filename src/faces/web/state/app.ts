import type { Finding, Question } from '../../../base/answers/finding.ts'
import { type TemplateKind, templateText } from '../../../craft/templates.ts'
import { hasErrors, isWritten, keepInFile, readText, removeValue, textOf, writeValue } from './craftFile.ts'
import { fetchHanded, handedName } from './handed.ts'
import { keepLooking } from './looking.ts'
import { type OpenedFile, pickFile, readFile, saveFile } from './openedFiles.ts'
import { type Session, startSession } from './openedSession.ts'
import { openStore } from './saved.ts'
import { createStore, type FileFault, type UnitSystem } from './store.ts'
import { change, redo, type Tried, undo, type Work, withoutTried, withTried } from './work.ts'

const store = createStore()
const clock = () => Date.now()
let session: Session
let shelf: Awaited<ReturnType<typeof openStore>> | undefined

/** Everything the pages may do. Edits are refused, with a word why, while another tab keeps the craft. */
export const app = {
  store,

  /** Opens the browser's store and the craft this tab, or any tab, had last. */
  async start(): Promise<void> {
    try {
      shelf = await openStore()
    } catch (error) {
      store.set({
        notice: `This browser keeps nothing (${(error as Error).message}). Save the craft to a file before you leave.`,
      })
    }
    keepLooking(store)
    session = startSession(store, shelf, clock)
    const units = await shelf?.setting<UnitSystem>('units')
    const last = sessionStorage.getItem('craft') ?? (await shelf?.setting<string>('last'))
    if (last) await session.openKept(last)
    await takeHanded()
    store.set({ ready: true, ...(units ? { units } : {}) })
  },

  /** The whole text of the file, as typed. */
  editText: (text: string) =>
    edit((work) => change(work, { text, label: 'edit the file', merge: 'text' }, clock()), true),

  /** Writes one value into the file; text as in the file, "47 mm ±0.05 (measured)". */
  write: (path: string, text: string) =>
    edit((work) => {
      const written = writeValue(work.text, path, text)
      return change(work, { text: written, label: `write ${path}`, merge: `write ${path}` }, clock())
    }),

  /** Writes several values at once, as one step. */
  writeAll: (values: readonly (readonly [string, string])[]) =>
    edit((work) => {
      const text = values.reduce((sum, [path, value]) => writeValue(sum, path, value), work.text)
      return change(work, { text, label: `write ${values[0]?.[0] ?? 'nothing'}` }, clock())
    }),

  /** true when the text has something at a path */
  isWritten,

  /** Makes a thing another kind: what only the old kind has is taken out, what the new one needs written, in one step. */
  changeKind: (
    path: string,
    tag: string,
    word: string,
    goes: readonly string[],
    values: readonly (readonly [string, string])[],
  ) =>
    edit((work) => {
      let text = goes.reduce((sum, key) => removeValue(sum, `${path}.${key}`), work.text)
      text = writeValue(text, `${path}.${tag}`, word)
      text = values.reduce((sum, [at, value]) => writeValue(sum, at, value), text)
      return change(work, { text, label: `make ${path} ${word}` }, clock())
    }),

  /** Takes an item of a list, or a value, out of the file. */
  remove: (path: string) =>
    edit((work) => change(work, { text: removeValue(work.text, path), label: `take ${path} out` }, clock())),

  /** Tries a value: SI number or a word, and its text. Trying what the file says drops the trial. */
  tryValue: (path: string, value: number | string, text: string) =>
    edit((work) => {
      const { craft, units } = store.get()
      const was = craft ? textOf(craft, path, units) : ''
      const tried =
        was === text ? withoutTried(work.tried, path) : withTried(work.tried, { path, value, text, was })
      return change(work, { tried, label: `try ${path}`, merge: `try ${path}` }, clock())
    }),

  /** Tries several values at once, as one step: path, SI number or word, and its text. */
  tryAll: (values: readonly (readonly [string, number | string, string])[], label: string) =>
    edit((work) => {
      const { craft, units } = store.get()
      const tried = values.reduce<readonly Tried[]>((sum, [path, value, text]) => {
        const was = craft ? textOf(craft, path, units) : ''
        return was === text ? withoutTried(sum, path) : withTried(sum, { path, value, text, was })
      }, work.tried)
      return change(work, { tried, label }, clock())
    }),

  dropOne: (path: string) =>
    edit((work) => change(work, { tried: withoutTried(work.tried, path), label: `drop ${path}` }, clock())),

  dropAll: () => edit((work) => change(work, { tried: [], label: 'drop what was tried' }, clock())),

  /** Writes everything tried into the file and the log. */
  keep: (reason: string, expect: string) =>
    edit((work) => {
      const text = keepInFile(work.text, work.tried, { date: today(), reason, expect })
      return change(work, { text, tried: [], label: 'keep what was tried' }, clock())
    }),

  undo: () => edit(undo, true),
  redo: () => edit(redo, true),

  setUnits(units: UnitSystem) {
    store.set({ units })
    void shelf?.setSetting('units', units)
  },

  /** what the page expects of the tried values, for the log */
  expect: (expects: string) => store.set({ expects }),

  /** a page's findings as it worked them out, for the marks across the top */
  found: (question: Question, findings: readonly Finding[]) =>
    store.set({ findings: { ...store.get().findings, [question]: findings } }),

  say: (notice: string) => store.set({ notice }),

  /** Opens a file from the user's disk; answers its problems, none when it was opened. */
  async openPicked(): Promise<FileFault | undefined> {
    const file = await pickFile()
    return file && open(file)
  },
  openDropped: async (file: File) => open(await readFile(file)),
  /** opens a text that cannot be read as it stands, so that it can be mended here */
  openToMend: (file: OpenedFile) => session.openText(file.text, file.name),
  /** an example; opening it again takes up the untouched one kept before */
  openExample: (name: string, text: string) => session.openFile({ name, text }),
  openKept: (craftId: string) => session.openKept(craftId),
  newCraft: (name: string, kind?: TemplateKind) =>
    session.openText(
      templateText(name, kind),
      `${name.toLowerCase().replace(/[^a-z0-9]+/g, '-') || 'craft'}.yaml`,
    ),
  close: () => session.close(),
  listKept: async () => (await shelf?.list()) ?? [],
  forget: async (craftId: string) => shelf?.forget(craftId),
  history: async (craftId: string) => (await shelf?.history(craftId)) ?? [],
  /** puts an earlier text back, as a change like any other */
  restore: (text: string) =>
    edit((work) => change(work, { text, label: 'go back to an earlier text' }, clock()), true),
  takeOver: () => session.takeOver(),

  /** Hands the text over as a plain file. */
  async saveToFile(): Promise<void> {
    const { work } = store.get()
    if (!work) return
    const name = await saveFile(work.fileName, work.text)
    if (name) store.set({ notice: `Saved as ${name}.` })
  },
}

/** Opens the craft that the address says is handed over, once: a reload goes on with what was made of it. */
async function takeHanded(): Promise<void> {
  const name = handedName(location.search)
  if (name === undefined) return
  try {
    await session.openFile(await fetchHanded(name))
    history.replaceState(null, '', `${location.pathname}${location.hash}`)
  } catch (error) {
    store.set({ notice: (error as Error).message })
  }
}

async function open(file: OpenedFile): Promise<FileFault | undefined> {
  const problems = await session.openFile(file)
  return problems.length > 0 ? { file, problems } : undefined
}

let askedToStay = false

/**
 * Makes a change; answers '' when it was made, else why not. A change by form never leaves a file that read in a state
 * that does not read; text edits, undo and going back may.
 */
function edit(by: (work: Work) => Work, mayBreak = false): string {
  const { work, role, problems } = store.get()
  if (!work) return 'there is no craft'
  if (role === 'follower') return refuse('Another tab keeps this craft. Take it over here to change it.')
  try {
    const next = by(work)
    if (!mayBreak && next.text !== work.text && !hasErrors(problems)) {
      const after = readText(next.text, next.fileName).problems
      const fault = after.find((problem) => problem.severity === 'error')
      if (fault) return refuse(`Not written: ${fault.says}.`)
    }
    store.setWork(next)
  } catch (error) {
    return refuse((error as Error).message)
  }
  if (!askedToStay) {
    askedToStay = true
    // asks the browser not to clear the store when disk space runs short; it may refuse without harm
    void navigator.storage?.persist?.().catch(() => false)
  }
  return ''
}

function refuse(notice: string): string {
  store.set({ notice })
  return notice
}

/** the day by the clock on the wall, as the log has it */
function today(): string {
  const now = new Date(clock())
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
