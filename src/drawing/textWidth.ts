/**
 * Widths of Helvetica letters in thousandths of the text size.
 * Source: Adobe Systems, Core 14 Font Metrics (AFM 4.1, 1997), Helvetica and Helvetica-Bold.
 */
const plainAscii = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
]
const others: Record<string, number> = {
  '°': 400,
  '·': 278,
  '±': 584,
  '×': 584,
  '−': 584,
  '²': 333,
  '³': 333,
  '–': 556,
  '—': 1000,
  '…': 1000,
  '½': 834,
  '\u202f': 278,
  '\u2009': 278,
  '\u00a0': 278,
  '→': 1000,
}
/** Helvetica-Bold runs wider by about this much over ordinary words */
const boldPart = 1.07

/** Width of a line of text, mm, for a text size in mm; letters outside the table count as a digit. */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0
  for (const letter of text) {
    const code = letter.codePointAt(0)!
    sum += (code >= 32 && code < 127 ? plainAscii[code - 32] : others[letter]) ?? 556
  }
  return (sum / 1000) * size * (bold ? boldPart : 1)
}

/** Words broken into lines no wider than `width` mm; a word that is too long keeps a line of its own. */
export function wrapText(text: string, size: number, width: number, bold = false): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && textWidth(longer, size, bold) > width) {
      lines.push(line)
      line = word
    } else line = longer
  }
  if (line !== '') lines.push(line)
  return lines
}
