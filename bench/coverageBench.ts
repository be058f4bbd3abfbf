/**
 * Coverage of the printed ranges by fresh draws through the whole balance (minutes), and how true the coarse balance is that
 * draws are solved with. `--draws N` and `--craft N` for less, `--accuracy` for the latter
 * alone, `--afloat` for draft and outlets alone (seconds a craft); `--docs` writes docs/ranges.md.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { accuracyOf } from '../tests/ranges/accuracy.ts'
import { coverageOf, coveredAnswers } from '../tests/ranges/coverage.ts'
import { type CoverageAfloat, coverageAfloat } from '../tests/ranges/coverageAfloat.ts'
import { coveredCrafts } from '../tests/ranges/crafts.ts'

const args = process.argv.slice(2)
const number = (name: string, otherwise: number) => {
  const at = args.indexOf(name)
  return at >= 0 ? Number(args[at + 1]) : otherwise
}
const draws = number('--draws', 500)
const crafts = coveredCrafts(number('--craft', 30))
const percent = (x: number) => `${(100 * x).toFixed(1)} %`
const file = resolve(import.meta.dirname, '../docs/ranges.md')
const afloatTitle = '## Draft and outlets'
const accuracyTitle = '## How true is the balance that draws are solved with?'

function coverage(): string {
  const rows: string[] = []
  const sums = new Map<
    string,
    { inside: number; below: number; above: number; count: number; least: number; most: number }
  >()
  crafts.forEach((c, i) => {
    for (const got of coverageOf(c, coveredAnswers, draws, 1000 + i)) {
      const { value, low, high } = got.range
      const digits = high < 3 ? 2 : high < 30 ? 1 : 0
      const n = (x: number) => x.toFixed(digits)
      const row = `| ${got.craft} | ${got.answer} | ${n(low)} – ${n(value)} – ${n(high)} | ${n(got.median)} | ${percent(got.inside)} | ${percent(got.below)} | ${percent(got.above)} |`
      rows.push(row)
      process.stdout.write(`${row}\n`)
      const sum = sums.get(got.answer) ?? { inside: 0, below: 0, above: 0, count: 0, least: 1, most: 0 }
      sum.inside += got.inside
      sum.below += got.below
      sum.above += got.above
      sum.count++
      sum.least = Math.min(sum.least, got.inside)
      sum.most = Math.max(sum.most, got.inside)
      sums.set(got.answer, sum)
    }
  })
  const total = [...sums].map(
    ([name, s]) =>
      `| ${name} | ${s.count} | ${percent(s.inside / s.count)} | ${percent(s.least)} – ${percent(s.most)} | ${percent(s.below / s.count)} | ${percent(s.above / s.count)} |`,
  )
  process.stdout.write(`${total.join('\n')}\n`)
  return `# Ranges

Written by \`npx tsx bench/coverageBench.ts --docs\`. A printed range holds 95 in 100 of what the inputs' own doubts and those of the
models allow: all of them are drawn together, each evenly between its bounds, and the headline is the median. A single input at
its own bound never lies outside.

## Do fresh draws fall inside?

Each craft was drawn ${draws} times anew, by chance, and every draw solved by the whole balance. Of ${draws} draws, chance alone moves a
true 95 % by ±${(196 * Math.sqrt((0.95 * 0.05) / draws)).toFixed(1)} % (19 times in 20).

| answer | craft | inside, mean | least – most | below | above |
|---|---|---|---|---|---|
${total.join('\n')}

| craft | answer | printed: low – median – high | median of the draws | inside | below | above |
|---|---|---|---|---|---|---|
${rows.join('\n')}
`
}

function accuracy(): string {
  const lines = crafts.slice(0, 8).map((c) => {
    const a = accuracyOf(c, 24)
    const cell = (e: { middle: number; most: number }) => `${percent(e.middle)}, ${percent(e.most)}`
    const line = `| ${c.name} | ${cell(a.map)} | ${cell(a.rotation)} | ${cell(a.pull)} | ${cell(a.topSpeed)} |`
    process.stdout.write(`${line}\n`)
    return line
  })
  return `${accuracyTitle}

Draws are solved on small surfaces of the jet in water that cannot boil and of drag, to which each doubt adds a parabola of its own and
the strongest of the jet what they do two by two; what vapour takes is put in afterwards, where the drawn jet is that near to boiling.
Weights count by their sum. Pump maps of the doubts' bounds are made near the craft's own map. Against the whole balance with
maps of its own, draw by draw: the middle one of 24 misses and the largest. Large ones are draws where the engines just come
on their pipe, or do not.

| craft | torque and thrust of a near map | rotation | pull | top speed |
|---|---|---|---|---|
${lines.join('\n')}
`
}

/** Draft and outlets: a hull made anew and settled in full for each draw. */
function afloat(): string {
  const all = crafts.flatMap((c, i) => coverageAfloat(c, draws, 2000 + i))
  const names = [...new Set(all.map((c) => c.answer))]
  const row = (c: CoverageAfloat) => {
    const cm = (x: number) => (100 * x).toFixed(1)
    return `| ${c.craft} | ${c.answer} | ${cm(c.range.low)} – ${cm(c.range.value)} – ${cm(c.range.high)} | ${cm(c.median)} | ${percent(c.inside)} | ${percent(c.below)} | ${percent(c.above)} |`
  }
  const totals = names.map((name) => {
    const own = all.filter((c) => c.answer === name)
    const mean = (of: (c: CoverageAfloat) => number) =>
      percent(own.reduce((s, c) => s + of(c) / own.length, 0))
    const inside = own.map((c) => c.inside)
    return `| ${name} | ${own.length} | ${mean((c) => c.inside)} | ${percent(Math.min(...inside))} – ${percent(Math.max(...inside))} | ${mean((c) => c.below)} | ${mean((c) => c.above)} |`
  })
  process.stdout.write(`${totals.join('\n')}\n`)
  return `${afloatTitle}

Each craft was drawn ${draws} times anew (weights and their places, rider, every measure of the hull, tanks, openings, and up to 8 % that a
list made at home leaves out), its hull made and settled in full. Printed are centimetres. The range comes from six settled loads and
draws on the surface through them, with what each measure of the hull does by itself.

| answer | craft | inside, mean | least – most | below | above |
|---|---|---|---|---|---|
${totals.join('\n')}

| craft | answer | printed: low – as written – high | median of the draws | inside | below | above |
|---|---|---|---|---|---|---|
${all.map(row).join('\n')}
`
}

if (args.includes('--afloat')) {
  const [kept, accurate] = readFileSync(file, 'utf8').split(accuracyTitle)
  const page = `${kept!.split(afloatTitle)[0]!.trimEnd()}\n\n${afloat()}\n${accuracyTitle}${accurate}`
  if (args.includes('--docs')) writeFileSync(file, page)
  process.exit()
}
/** what is written by hand of the table stays */
const byHand = /\n## Why some[\s\S]*?(?=\n## )/.exec(readFileSync(file, 'utf8'))?.[0] ?? ''
const before = args.includes('--accuracy')
  ? readFileSync(file, 'utf8').split(accuracyTitle)[0]!
  : coverage() + byHand
const page = `${before.trimEnd()}\n\n${args.includes('--accuracy') ? '' : `${afloat()}\n`}${accuracy()}`
if (args.includes('--docs')) writeFileSync(file, page)
