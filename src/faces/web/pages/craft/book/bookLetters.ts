import plain from '@expo-google-fonts/arimo/400Regular/Arimo_400Regular.ttf?url'
import bold from '@expo-google-fonts/arimo/700Bold/Arimo_700Bold.ttf?url'
import type { FontFiles } from '../../../../../drawing/pdf.ts'

const fetched = async (url: string): Promise<Uint8Array> => {
  const answer = await fetch(url)
  if (!answer.ok) throw new Error(`the letters of the book could not be fetched (${answer.status})`)
  return new Uint8Array(await answer.arrayBuffer())
}

/** The letters a book carries; fetched when the first one is made. */
export async function bookLetters(): Promise<FontFiles> {
  const [one, two] = await Promise.all([fetched(plain), fetched(bold)])
  return { plain: one, bold: two }
}
