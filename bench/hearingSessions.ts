/** Events of whole invented sessions: how many were told, and how many of those told had happened. `tsx bench/hearingSessions.ts FIRST COUNT SNR` */
import { seededRandom } from '../src/base/numerics/random.ts'
import { drawnSession, heardSession, scored } from '../src/trades/sound/session.testkit.ts'

const [first = 4101, count = 6, snr = 10] = process.argv.slice(2).map(Number)
let [hits, misses, wrong] = [0, 0, 0]
for (let seed = first; seed < first + count; seed++) {
  const { hearing, truth } = heardSession(drawnSession(seededRandom(seed)), snr, seed)
  const s = scored(hearing.events, truth)
  hits += s.hits
  misses += s.misses.length
  wrong += s.wrong.length
  if (s.misses.length + s.wrong.length > 0)
    console.log(seed, 'missed', s.misses.join(', '), '| wrong', s.wrong.join(', '))
}
console.log(
  `${snr} dB, ${count} sessions from ${first}: recall ${(hits / (hits + misses)).toFixed(3)}, precision ${(hits / (hits + wrong)).toFixed(3)} of ${hits + misses}`,
)
