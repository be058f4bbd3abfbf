/** The present pipe with other stingers: pull, temperature and risk against bore, then the length of the best. */
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import type { StingerRow } from '../../trades/exhaust/exhaustTypes.ts'
import { boresToTry, stingerFindings, stingerRisk } from '../../trades/exhaust/stinger.ts'
import { CalledOff, type SearchWork } from './pipeSearch.ts'
import { type Judged, tryPipe } from './pipeTrial.ts'
import { prepareTrial, type TrialOrder } from './trial.ts'

export interface StingerSearchAnswer {
  /** false for the first answer, from coarse cells */
  final: boolean
  /** by rising bore, all with the present length */
  rows: StingerRow[]
  /** the best bore with other lengths; empty in the first answer */
  lengths: StingerRow[]
  now: StingerRow
  /** the best one that is no risk to the piston beyond the present one's */
  best: StingerRow
  /** rev/min that the jet holds the engine at with the present stinger, over the speeds that count */
  band: { from: number; to: number }
  curves: number
  findings: Finding[]
}

const grave = { good: 0, watch: 1, stop: 2 } as const

/** Searches bore, then length. RangeError for a craft without a pipe; CalledOff when called off. */
export async function findStinger(
  craft: Craft,
  order: TrialOrder,
  work: SearchWork<StingerSearchAnswer> = {},
): Promise<StingerSearchAnswer> {
  work.progress?.(0, 'the present pipe')
  const trial = prepareTrial(craft, order)
  const port = trial.spec.pipe[0]!.d0
  const { bore, length } = trial.now.stinger
  const bores = boresToTry(port, bore)
  let curves = 0
  const look = async (
    list: readonly { bore: number; length: number }[],
    cells: 'coarse' | 'fine',
  ): Promise<Judged[]> => {
    if (work.cancelled?.()) throw new CalledOff('called off')
    curves += list.length
    const requests = list.map((stinger) => {
      const last = trial.now.segments.length - 1
      // the end cone goes on to the new bore
      const segments = trial.now.segments.map((s, i) =>
        i === last && s.d1 < s.d0 ? { ...s, d1: stinger.bore } : s,
      )
      return { name: 'now' as const, pipe: { ...trial.now, segments, stinger }, cells }
    })
    return work.tryMany ? work.tryMany(requests, trial) : requests.map((r) => tryPipe(trial, r))
  }
  const rowOf = (a: Judged, base: Judged): StingerRow => {
    const { exhaustT, inside, gauge, torque } = a.curve
    return {
      bore: a.pipe.stinger.bore,
      length: a.pipe.stinger.length,
      pull: a.pull,
      thrust: a.thrust,
      pullAt: a.pullAt,
      torque: Math.max(...torque),
      exhaustT,
      gauge,
      inside,
      ...stingerRisk({ bore: a.pipe.stinger.bore, port, exhaustT, exhaustTNow: base.curve.exhaustT, inside }),
      cells: a.cells,
    }
  }
  const answer = (base: Judged, judged: readonly Judged[], long: readonly Judged[]): StingerSearchAnswer => {
    const rows = judged.map((a) => rowOf(a, base))
    const now = rows[judged.indexOf(base)]!
    const lengths = long.map((a) => rowOf(a, base))
    const worst = Math.max(1, grave[now.risk])
    const best = [...rows, ...lengths]
      .filter((r) => grave[r.risk] < 2 && grave[r.risk] <= worst)
      .reduce((b, r) => (r.thrust > b.thrust ? r : b), now)
    const band = base.band.filter(Number.isFinite)
    const made = {
      final: long.length > 0,
      rows,
      lengths,
      now,
      best,
      band: { from: Math.min(...band), to: Math.max(...band) },
      curves,
    }
    return { ...made, findings: stingerFindings(made, `engines.${trial.index}`) }
  }
  // pairs, so that two threads are busy and the progress moves
  const round = async (cells: 'coarse' | 'fine', from: number, to: number) => {
    const judged: Judged[] = []
    for (let i = 0; i < bores.length; i += 2) {
      work.progress?.(
        from + ((to - from) * i) / bores.length,
        `${(1000 * bores[i]!).toFixed(1)} mm, ${cells} cells`,
      )
      judged.push(
        ...(await look(
          bores.slice(i, i + 2).map((b) => ({ bore: b, length })),
          cells,
        )),
      )
    }
    return { base: judged[bores.indexOf(bore)]!, judged }
  }
  const quick = await round('coarse', 0.05, 0.25)
  work.early?.(answer(quick.base, quick.judged, []))
  const full = await round('fine', 0.25, 0.8)
  const best = answer(full.base, full.judged, []).best
  work.progress?.(0.82, 'its length, fine cells')
  const lengths = [0.7, 0.85, 1.2, 1.45].map((share) => Math.round(1000 * share * length) / 1000)
  const long = await look(
    lengths.map((l) => ({ bore: best.bore, length: l })),
    'fine',
  )
  work.progress?.(1, 'done')
  return answer(full.base, full.judged, long)
}
