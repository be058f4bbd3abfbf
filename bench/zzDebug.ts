import { readFileSync } from 'node:fs'
import { readCraft } from '../src/craft/index.ts'
import { printed } from '../src/base/answers/sentence.ts'
import { nextChecks } from '../src/whole/faults/nextChecks.ts'
import { rankRun } from '../src/whole/faults/rankRun.ts'
import { solveBalance } from '../src/whole/push/solveBalance.ts'
import { benchOf, simulate } from './diagnosis/sessions.ts'
const benches = ['sandpiper', 'teal', 'heron'].map((n) => { const { craft } = readCraft(readFileSync(`demo/${n}.yaml`, 'utf8'), n); return benchOf(n, craft!, solveBalance(craft!)) })
for (let seed = Number(process.argv[2]); seed < Number(process.argv[3]); seed++) {
  const sim = simulate(benches[(seed - 1) % 3]!, seed)
  const r = rankRun({ ...sim.session, answered: nextChecks.map((c) => ({ check: c.id, outcome: sim.look(c.reveals, c.reliability) })) })
  const truth = sim.faults.map((f) => f.cause)
  if (truth.includes(r.causes[0]!.id)) continue
  console.log('\n##', seed, benches[(seed - 1) % 3]!.name, truth.map((t, i) => `${t} (${sim.faults[i]!.begins})`).join(' + '), sim.session.log!.map((l) => l.says).join('; '), sim.session.observed!.map((o) => `${o.id}=${o.state}`).join(' '))
  for (const e of r.episodes) console.log('   ', e.kind, printed(e.says))
  console.log('   ', sim.session.hearing!.events.map((e) => `${e.kind}@${e.time.toFixed(0)}`).join(' '))
  for (const c of r.causes.slice(0, 4)) console.log('  ', c.share.toFixed(3), c.id, c.since, '| for', c.for.map((x) => printed(x)).join('; '), '| against', c.against.map((x) => printed(x)).join('; '))
  for (const t of truth) { const c = r.causes.find((x) => x.id === t); console.log('   truth', t, c?.share.toFixed(3), c?.since, '| for', c?.for.map((x) => printed(x)).join('; '), '| against', c?.against.map((x) => printed(x)).join('; ')) }
}
