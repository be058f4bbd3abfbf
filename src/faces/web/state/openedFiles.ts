import { decodeCraftBytes } from '../../../craft/index.ts'

/** A file as it came from the user, read as UTF-8; `fault` says why it could not be. */
export interface OpenedFile {
  name: string
  text: string
  fault?: string
  handle?: FileSystemFileHandle
}

/** bytes; a craft file is a few kilobytes, and ten megabytes are refused before they are read */
const mostBytes = 2_000_000

/** Reads a file's text, refusing what cannot be a craft file before it costs anything. */
export async function readFile(file: File): Promise<OpenedFile> {
  const name = file.name
  if (file.size > mostBytes) {
    const says = `${(file.size / 1e6).toFixed(1)} MB is too big for a craft file; the most is 1 MB`
    return { name, text: '', fault: says }
  }
  const { text, problem } = decodeCraftBytes(new Uint8Array(await file.arrayBuffer()), name)
  return problem ? { name, text: '', fault: problem.says } : { name, text }
}

interface Pickers {
  showOpenFilePicker?: (options: object) => Promise<FileSystemFileHandle[]>
  showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>
}

const types = [{ description: 'Craft file', accept: { 'application/yaml': ['.yaml', '.yml'] } }]

/** The browser's own open dialogue where it has one, so that saving can go back to the same file. */
export async function pickFile(): Promise<OpenedFile | undefined> {
  const { showOpenFilePicker } = globalThis as Pickers
  if (!showOpenFilePicker) return pickByInput()
  try {
    const [handle] = await showOpenFilePicker({ types })
    return handle && { ...(await readFile(await handle.getFile())), handle }
  } catch (error) {
    if (isAbort(error)) return undefined
    return pickByInput()
  }
}

function pickByInput(): Promise<OpenedFile | undefined> {
  const input = document.createElement('input')
  input.type = 'file'
  input.accept = '.yaml,.yml,application/yaml,text/plain'
  return new Promise((resolve) => {
    input.addEventListener('change', () => {
      const file = input.files?.[0]
      resolve(file ? readFile(file) : undefined)
    })
    input.addEventListener('cancel', () => resolve(undefined))
    input.click()
  })
}

/** Writes a text, or bytes, to a file the user picks, or hands it over as a download. Answers the file's name, or nothing when called off. */
export async function saveFile(
  name: string,
  text: string | Uint8Array<ArrayBuffer> | Blob,
): Promise<string | undefined> {
  const { showSaveFilePicker } = globalThis as Pickers
  if (showSaveFilePicker) {
    try {
      const handle = await showSaveFilePicker({
        suggestedName: name,
        ...(/\.ya?ml$/i.test(name) ? { types } : {}),
      })
      const out = await handle.createWritable()
      await out.write(text)
      await out.close()
      return handle.name
    } catch (error) {
      if (isAbort(error)) return undefined
    }
  }
  const type = typeof text === 'string' ? 'application/yaml' : 'application/octet-stream'
  download(name, text instanceof Blob ? text : new Blob([text], { type }))
  return name
}

function download(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 10_000)
}

/** Hands bytes over as a file. */
export const downloadBytes = (name: string, bytes: Uint8Array): void =>
  download(name, new Blob([bytes as Uint8Array<ArrayBuffer>]))

/** Hands a file on by the system's own sharing where it has one, else as a download. */
export async function handFile(file: File): Promise<void> {
  if (navigator.canShare?.({ files: [file] })) {
    try {
      return await navigator.share({ files: [file] })
    } catch (error) {
      if (isAbort(error)) return
    }
  }
  download(file.name, file)
}

const isAbort = (error: unknown) => error instanceof DOMException && error.name === 'AbortError'
