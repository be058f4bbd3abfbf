/**
 * Coverage of the printed ranges by fresh draws through the whole balance (minutes), and how true the coarse balance is that
 * draws are solved with. `--draws N` and `--craft N` for less; `--docs` writes docs/ranges.md.
 */
import { writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { coverageOf, pushAnswers } from '../tests/ranges/coverage.ts'
import { coveredCrafts } from '../tests/ranges/crafts.ts'

const args = process.argv.slice(2)
const number = (name: string, otherwise: number) => {
  const at = args.indexOf(name)
  return at >= 0 ? Number(args[at + 1]) : otherwise
}
const draws = number('--draws', 500)
const crafts = coveredCrafts(number('--craft', 30))
const percent = (x: number) => `${(100 * x).toFixed(1)} %`
const rows: string[] = []
const sums = new Map<
  string,
  { inside: number; below: number; above: number; count: number; least: number; most: number }
>()
crafts.forEach((c, i) => {
  for (const got of coverageOf(c, pushAnswers, draws, 1000 + i)) {
    const { value, low, high } = got.range
    const digits = high < 30 ? 1 : 0
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
if (args.includes('--docs')) {
  const page = `# Ranges

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
  writeFileSync(resolve(import.meta.dirname, '../docs/ranges.md'), page)
}
