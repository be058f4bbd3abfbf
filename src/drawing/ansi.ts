/** Colours for terminals: ECMA-48 (1991), select graphic rendition, with the common 24-bit extension 38;2 (ISO 8613-6). */
import { rgbOf } from './palette.ts'

/** Words in a colour; near-black is left in the terminal's own colour, which may be light on dark. */
export function styleText(words: string, colour: string): string {
  if (!colour.startsWith('#')) return words
  const [r, g, b] = rgbOf(colour)
  return Math.max(r, g, b) < 96 ? words : `\u001b[38;2;${r};${g};${b}m${words}\u001b[39m`
}
