/**
 * Speed of the two searches on the demo craft Dabchick: seconds of processor time in one thread, to the first useful answer
 * and to the last, over the seconds wanted on two cores; and how much memory a search leaves behind.
 * Run: npx tsx bench/pipe-search.ts
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readCraft } from '../src/craft/index.ts'
import { findPipe } from '../src/whole/breath/pipeSearch.ts'
import { findStinger } from '../src/whole/breath/stingerSearch.ts'

const { craft } = readCraft(readFileSync(join(import.meta.dirname, '../demo/dabchick.yaml'), 'utf8'))
if (!craft) throw new Error('the demo craft does not read')

async function timed<T>(
  run: (early: () => void) => Promise<T>,
): Promise<{ first: number; whole: number; heap: number; answer: T }> {
  const start = process.cpuUsage()
  const seconds = () => {
    const { user, system } = process.cpuUsage(start)
    return (user + system) / 1e6
  }
  let first = Number.NaN
  const answer = await run(() => {
    first = seconds()
  })
  const whole = seconds()
  globalThis.gc?.()
  return { first, whole, heap: process.memoryUsage().heapUsed / 1e6, answer }
}

function say(
  name: string,
  r: { first: number; whole: number; heap: number },
  wanted: number,
  curves: number,
): void {
  console.log(
    `${name}: first answer ${r.first.toFixed(1)} s, whole ${r.whole.toFixed(1)} s of one core (${curves} curves); ` +
      `over two cores at best ${(r.whole / 2).toFixed(1)} s, ${(r.whole / 2 / wanted).toFixed(2)} of the ${wanted} s wanted; heap after ${r.heap.toFixed(0)} MB`,
  )
}

const stinger = await timed((early) => findStinger(craft, { index: 0 }, { early }))
say('stinger search', stinger, 30, stinger.answer.curves)
const pipe = await timed((early) => findPipe(craft, { index: 0 }, { early }))
say('pipe search', pipe, 180, pipe.answer.curves)
const again = await timed((early) => findStinger(craft, { index: 0 }, { early }))
say('stinger search again', again, 30, again.answer.curves)
