import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { FontFiles } from '../../drawing/pdf.ts'

/** The letters a book carries, from the installed packages. */
export function fontsHere(): FontFiles {
  const { resolve } = createRequire(import.meta.url)
  const read = (name: string) => readFileSync(resolve(`@expo-google-fonts/arimo/${name}`))
  return { plain: read('400Regular/Arimo_400Regular.ttf'), bold: read('700Bold/Arimo_700Bold.ttf') }
}
