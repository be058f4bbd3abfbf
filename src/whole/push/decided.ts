/**
 * A craft with its open choices made: pitch, blades, nozzle or ratio that its file leaves `undecided` are put at what does best on the
 * craft as written, so that everything else can be answered before anything is built. Coarse over all that is open, then finer.
 */
import { inKw, ranged } from '../../base/answers/amounts.ts'
import type { FileChange } from '../../base/answers/decision.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { joined, say, whole } from '../../base/answers/sentence.ts'
import { type Craft, undecidedWord, whatIf } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { changesFor, type Design, designOfCraft, fileChanges, rounded } from './design.ts'
import { curveOf, pitched, topOf } from './designSearch.ts'
import { DesignTrials } from './designTrials.ts'
import { partName } from './pushAnswer.ts'

interface Open {
  pitch: boolean
  blades: boolean
  nozzle: boolean
  ratio: boolean
}

const openIn = ({ jet, drive }: Craft): Open => ({
  pitch: jet.rotor.pitch.undecided === true,
  blades: jet.rotor.blades.undecided === true,
  nozzle: jet.nozzle.bore.undecided === true,
  ratio: drive.ratio.undecided === true,
})

export interface Decided {
  craft: Craft
  /** what was put in, as one would type it */
  filled: readonly FileChange[]
}

const known = new WeakMap<Craft, Decided>()

/** The craft with its open choices made; the craft itself when there are none. Throws NotBalanced when an engine has no curve. */
export function decided(craft: Craft, solved?: SolvedCurves): Decided {
  const open = openIn(craft)
  if (!Object.values(open).some(Boolean)) return { craft, filled: [] }
  const before = known.get(craft)
  if (before) return before
  const best = bestOpen(craft, open, new DesignTrials(craft, solved))
  // every open value is put in, also where it is the stand-in itself that does best
  const values = {
    ...changesFor(craft, best),
    ...(open.pitch ? { 'jet.rotor.pitch': best.pitch } : {}),
    ...(open.blades ? { 'jet.rotor.blades': best.blades } : {}),
    ...(open.nozzle ? { 'jet.nozzle.bore': best.nozzle } : {}),
    ...(open.ratio ? { 'drive.ratio': best.ratio } : {}),
  }
  const filled = fileChanges(craft, values).map((c) => ({ ...c, from: undecidedWord }))
  const made: Decided = { craft: whatIf(craft, values), filled }
  known.set(craft, made)
  return made
}

const nozzles = [0.47, 0.53, 0.59, 0.65, 0.7]
const ratios = [1, 1.2, 1.45, 1.75, 2.1]
const coarse = Array.from({ length: 8 }, (_, i) => Math.exp(-1 + 0.2 * i))
const fine = [0.86, 0.93, 1, 1.07, 1.15]

/** The best of everything that is open; sizes that are given stay. */
function bestOpen(craft: Craft, open: Open, trials: DesignTrials): Design {
  const now = designOfCraft(craft)
  const over = (designs: readonly Design[], pitches: (d: Design) => number[]) =>
    designs.map((design) => {
      const at = open.pitch ? pitches(design) : [now.pitch]
      const { tried } = trials.run({ case: 'as written', designs: at.map((p) => pitched(design, p)) })
      const merit = curveOf(at, tried, (t) => t.merit)
      const top = at.length > 1 ? topOf(at, merit) : { pitch: now.pitch, merit: tried[0]!.merit }
      return { design: pitched(design, top.pitch), merit: top.merit }
    })
  const best = (found: ReturnType<typeof over>) => found.reduce((a, b) => (b.merit > a.merit ? b : a)).design
  const all: Design[] = []
  for (const blades of open.blades ? [2, 3, 4] : [now.blades])
    for (const nozzle of open.nozzle ? nozzles.map((n) => n * now.bore) : [now.nozzle])
      for (const ratio of open.ratio ? ratios : [now.ratio]) all.push({ ...now, blades, nozzle, ratio })
  const first = best(over(all, () => coarse.map((s) => s * now.bore)))
  const near = open.nozzle ? [0.95, 1, 1.05] : [1]
  return rounded(
    best(
      over(
        near.map((share) => ({ ...first, nozzle: first.nozzle * share })),
        () => fine.map((s) => s * first.pitch),
      ),
    ),
  )
}

/** What was put in for open choices, and what of the engines is not known yet, as a finding; none when all is given. */
export function undecidedFindings(craft: Craft, { filled }: Decided): Finding[] {
  const engines = craft.engines.flatMap((e) => (e.kind === 'peak' && e.power.undecided ? [e.power] : []))
  if (filled.length === 0 && engines.length === 0) return []
  const put = filled.map((c) => say`${partName(craft, c.path)} ${c.to}`)
  const power = engines.map((q) => say`${partName(craft, q.path)} ${ranged(inKw, q)}`)
  return [
    {
      id: 'push.undecided',
      question: 'push',
      says: whole(
        joined(
          [
            ...(put.length > 0
              ? [say`not decided yet, and worked out as what does best: ${joined(put)}`]
              : []),
            ...(power.length > 0
              ? [say`not known yet, and taken as usual for volume and temper: ${joined(power)}`]
              : []),
          ],
          '; ',
        ),
      ),
      standing: 'unknown',
      because: [
        ...filled.map((c) => ({
          says: say`${partName(craft, c.path)}: ${c.from} in the file`,
          link: c.path,
        })),
        ...engines.map((q) => ({ says: q.why ?? 'not known yet', link: q.path })),
      ],
      ...(filled.length > 0
        ? {
            // nothing is made before this: it stands with what comes first
            harm: 'before the water' as const,
            act: say`plan with ${joined(filled.map((c) => say`${c.to} for ${partName(craft, c.path)}`))}, and write it into the file once it is made`,
            changes: filled,
          }
        : {}),
      sources: [
        'Search over what is open, on the whole balance',
        'Power from mean pressure and speed: common practice, no source',
      ],
    },
  ]
}
