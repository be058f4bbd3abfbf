import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { readText } from '../../state/craftFile.ts'
import { countSources, sourcesInWords, worthMeasuring } from './summary.ts'

const heron = readFileSync('demo/heron.yaml', 'utf8')
const craft = readText(heron, 'heron.yaml').craft!

test('numbers are counted by where they come from', () => {
  const counts = countSources(craft)
  const written = (word: string) => heron.split(`(${word})`).length - 1
  expect(counts.measured).toBe(written('measured'))
  expect(counts.maker).toBe(written('maker'))
  expect(counts.assumed).toBeGreaterThan(0)
})

test('the counts make a sentence, and what there is none of is left out', () => {
  expect(sourcesInWords({ measured: 34, maker: 5, guess: 8, assumed: 21 })).toBe(
    '34 numbers measured, 5 from the maker, 8 guessed and 21 assumed',
  )
  expect(sourcesInWords({ measured: 0, maker: 0, guess: 3, assumed: 0 })).toBe('3 numbers guessed')
  expect(sourcesInWords({ measured: 0, maker: 0, guess: 0, assumed: 0 })).toBe('no numbers yet')
})

test('what is worth measuring is never measured already, and the most doubtful comes first', () => {
  const list = worthMeasuring(craft)
  expect(list.length).toBeGreaterThan(3)
  expect(list.every(({ quantity, half }) => quantity.source !== 'measured' && half > 0)).toBe(true)
  const doubts = list.map((one) => one.doubt)
  expect(doubts).toEqual([...doubts].sort((a, b) => b - a))
})

test('of many alike in a list one stands for all', () => {
  const kinds = worthMeasuring(craft).map(({ quantity }) => quantity.path.replace(/\.\d+/g, '.*'))
  expect(new Set(kinds).size).toBe(kinds.length)
})
