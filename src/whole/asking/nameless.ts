/** Words of a builder's own made fit for strangers: what looks like a name, a place or an address is left out. */

const gone = '…'

/** not names, though they begin large */
const known = new Set(
  'GPS PETG PLA ABS ASA PC PA TIG MIG CDI EPS XPS AAC WAV MP4 N A B C D V1 V2 Monday Tuesday Wednesday Thursday Friday Saturday Sunday January February March April May June July August September October November December I'.split(
    ' ',
  ),
)

const addresses: readonly RegExp[] = [
  /\bhttps?:\/\/\S+/gi,
  /\bwww\.\S+/gi,
  /[\w.+-]+@[\w-]+(\.[\w-]+)*/g,
  /(^|\s)@\w+/g,
  // coordinates, with points of the compass or as two long decimals
  /\d{1,3}[°º]\s*\d{0,2}['′]?\s*[\d.]*["″]?\s*[NSEW]\b/g,
  /-?\d{1,3}\.\d{4,}\s*[,;]\s*-?\d{1,3}\.\d{4,}/g,
  // telephone numbers
  /(?:\+|\b00)\d[\d\s()/-]{6,}\d/g,
  /\b0\d{2,5}[\s/-]\d[\d\s/-]{3,}\d\b/g,
  // files and folders
  /(?:[A-Za-z]:\\|~?\/)[\w./\\-]{3,}/g,
]

/** A text without addresses and without words in it that begin large; the first word of a sentence cannot be told from a name and stays. */
export function nameless(text: string): string {
  const bare = addresses.reduce((t, pattern) => t.replace(pattern, ` ${gone} `), text)
  return bare
    .replace(
      /([.!?:;]\s+|^\s*)?(\p{Lu}[\p{L}’'-]+)/gu,
      (all, start: string | undefined, word: string, at: number) => {
        if (start !== undefined || at === 0) return all
        // part of a longer word, or letters and digits of a type
        if (/[\p{L}\d]/u.test(bare[at - 1] ?? '') || known.has(word)) return all
        return gone
      },
    )
    .replace(/(?:…\s*){2,}/g, `${gone} `)
    .replace(/[ \t]+/g, ' ')
    .trim()
}

/** The name of a part on the craft: whose it is goes. */
export const namelessPart = (name: string): string =>
  nameless(`x ${name.replace(/\p{L}+[’']s\s+/gu, '')}`)
    .slice(2)
    .trim()
