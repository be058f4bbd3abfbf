import { seededRandom } from './src/base/numerics/random.ts'
import { printed } from './src/base/answers/sentence.ts'
import { makeClip } from './src/trades/sound/synth/clip.ts'
import { sessionScript, worstDay } from './src/trades/sound/synth/session.testkit.ts'
import { hear } from './src/trades/sound/hearSamples.ts'
const snr = Number(process.argv[2] ?? 15)
const { script, truth } = sessionScript(worstDay, seededRandom(5))
const clip = makeClip(script, { snr }, 5)
for (const t of truth) console.log(t.kind, t.time, t.before, t.after)
const h = hear(clip.samples, clip.rate, {})
console.log(h.verdict.code, h.verdict.says)
for (const e of h.events) console.log(e.time.toFixed(2), e.lasts.toFixed(2), e.kind, e.engine, printed(e.says), e.confidence.toFixed(2))
for (const q of h.quality) console.log('q', q.label, q.from.toFixed(1), q.to.toFixed(1), q.halfOrders.toFixed(1), q.weak.toFixed(2), q.reads)
for (const t of h.tracks) { const s: string[] = []; for (let i = 0; i < t.rpm.length; i += 20) s.push(String(Math.round(t.rpm[i]! / 10) * 10)); console.log(t.label, s.join(' ')) }
