/** The figures of simulated sessions in words and tables. */
export interface Outcome {
  /** checks made; -1: all of them */
  checks: number
  minutes: number
  truth: readonly string[]
  /** a true cause stands first; the main one among the first three; all of them among the first three */
  first: boolean
  main: boolean
  all: boolean
  /** any of them is */
  any: boolean
  top: number
  shares: readonly (readonly [share: number, so: boolean])[]
  missed: readonly string[]
  named: readonly string[]
}

interface About {
  from: number
  count: number
  seconds: number
}

const mean = (list: readonly number[]) =>
  list.length === 0 ? Number.NaN : list.reduce((a, b) => a + b, 0) / list.length
const part = (list: readonly Outcome[], is: (o: Outcome) => boolean) => mean(list.map((o) => Number(is(o))))
const two = (x: number) => x.toFixed(2)

/** Mean squared error of every told share against what was so, by session. */
const brier = (list: readonly Outcome[]) =>
  mean(list.map((o) => o.shares.reduce((s, [p, so]) => s + (p - Number(so)) ** 2, 0)))

function rows(results: Readonly<Record<string, readonly Outcome[]>>): string[][] {
  const names: Readonly<Record<string, string>> = {
    worth: 'by worth',
    sound: 'by worth, through sound',
    knowing: 'all-knowing',
    cheapest: 'cheapest first',
    random: 'at random',
  }
  return Object.entries(results).flatMap(([name, list]) =>
    [0, 3, 5, 7, -1].flatMap((k) => {
      const own = list.filter((o) => o.checks === k)
      if (own.length === 0) return []
      const one = own.filter((o) => o.truth.length === 1)
      return [
        [
          names[name]!,
          k < 0 ? 'all' : String(k),
          k < 0 ? '—' : String(Math.round(mean(own.map((o) => o.minutes)))),
          two(part(own, (o) => o.first)),
          two(part(own, (o) => o.any)),
          two(part(own, (o) => o.main)),
          two(part(own, (o) => o.all)),
          two(part(one, (o) => o.first)),
          two(brier(own)),
          String(own.length),
        ],
      ]
    }),
  )
}

const heads = [
  'next check',
  'checks',
  'minutes',
  'a true cause first',
  'a true one in first three',
  'main cause in first three',
  'all causes in first three',
  'first, one fault only',
  'Brier',
  'sessions',
]

function reliability(list: readonly Outcome[]): string[][] {
  const bins = [0.02, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 0.97, 1.001]
  const all = list.flatMap((o) => o.shares)
  return bins.slice(0, -1).flatMap((low, i) => {
    const own = all.filter(([p]) => p >= low && p < bins[i + 1]!)
    return own.length === 0
      ? []
      : [
          [
            `${two(low)} to ${two(Math.min(1, bins[i + 1]!))}`,
            two(mean(own.map(([p]) => p))),
            two(mean(own.map(([, so]) => Number(so)))),
            String(own.length),
          ],
        ]
  })
}

const table = (head: readonly string[], body: readonly (readonly string[])[]) =>
  [
    `| ${head.join(' | ')} |`,
    `|${head.map(() => '---').join('|')}|`,
    ...body.map((r) => `| ${r.join(' | ')} |`),
  ].join('\n')

function confusion(list: readonly Outcome[]): string {
  const missed = new Map<string, Map<string, number>>()
  for (const o of list)
    for (const m of o.missed) {
      const to = missed.get(m) ?? new Map<string, number>()
      to.set(o.named[0]!, (to.get(o.named[0]!) ?? 0) + 1)
      missed.set(m, to)
    }
  return [...missed]
    .sort((a, b) => sum(b[1]) - sum(a[1]))
    .slice(0, 14)
    .map(
      ([m, to]) =>
        `${m} ${sum(to)}: ${[...to]
          .sort((a, b) => b[1] - a[1])
          .slice(0, 4)
          .map(([n, k]) => `${n} ${k}`)
          .join(', ')}`,
    )
    .join('\n')
}
const sum = (m: ReadonlyMap<string, number>) => [...m.values()].reduce((a, b) => a + b, 0)

export function diagnosisReport(
  results: Readonly<Record<string, readonly Outcome[]>>,
  about: About,
): { text: string; page: string } {
  const body = rows(results)
  const worth = results['worth'] ?? []
  const rel = reliability(worth.filter((o) => o.checks === 5))
  const text = [
    `${about.count} sessions from seed ${about.from}, ${Math.round(about.seconds)} s`,
    table(heads, body),
    table(['told', 'mean', 'so', 'n'], rel),
    'missed after 5:',
    confusion(worth.filter((o) => o.checks === 5)),
    'missed with all:',
    confusion(worth.filter((o) => o.checks === -1)),
  ].join('\n')
  const counts = new Map(
    Object.entries(results).map(([name, list]) => [name, list.filter((o) => o.checks === 0).length]),
  )
  return { text, page: page(body, rel, counts, confusion(worth.filter((o) => o.checks === 5))) }
}

const names: readonly (readonly [key: string, says: string])[] = [
  [
    'sound',
    'sessions made into an invented sound, recorded by an invented phone and heard by the real hearing',
  ],
  ['knowing', 'sessions told by an all-knowing reckoner'],
]

function page(
  body: readonly (readonly string[])[],
  rel: readonly (readonly string[])[],
  counts: ReadonlyMap<string, number>,
  wrong: string,
): string {
  const more = names
    .flatMap(([key, says]) => (counts.get(key) ? [`${counts.get(key)} ${says}`] : []))
    .join('; ')
  return `# How well a run's causes are ranked

Written by \`npx tsx bench/diagnosisBench.ts --merge … --write docs/diagnosis.md\` from parts that ran side by side.

${counts.get('worth')} simulated sessions of three demo craft (Sandpiper, Teal, Heron)${more ? `; ${more}` : ''}. Each begins with a true craft that
differs from its file (torque 7 %, load 6 %, thrust 6 %, drag 12 %, all log-normal), one fault, in one of six two, in one of twelve three;
about one in six is a common cause that reaches every engine. Faults begin at their own time; steady speeds come from the torque balance of
the whole craft with the faults on it (\`bench/diagnosis/trueCraft.ts\`), signs from rules on the states of the parts
(\`bench/diagnosis/signsOf.ts\`), written apart from the ranking's table; a check's answer is wrong as often as its reliability says. Nothing
was noticed in most sessions; where the hearing is made by hand it misses a third of the events and makes up 3 to 6 %. Numbers of a simulation
by the same author say how the parts work together, not how real days on the water go.

${table(heads, body)}

"Main cause" is the first one drawn; with two or three faults another true one may be found first. "All" has every check answered. Settings
and rows of signs were mended on seeds below 1000, where physics asked for it; the makers of sessions were never changed for the ranking.
The last mends came after a part of these seeds had been looked at.

**The ceiling.** The all-knowing reckoner (\`bench/diagnosis/oracle.ts\`) draws 8,000 days a craft as the sessions are drawn, weighs each by how
near its speeds and events come, and exactly by the chance of every answer; its checks are those that leave least open, whatever they cost.
It sees the sound only by its speeds and events, and few drawn days have the same three faults, so it stands a little below what could be
known at most. What it does not reach with so many checks is not in the answers.

Wanted were a true cause in the first three of .75, .85 and .92 of sessions after 3, 5 and 7 checks, and a true one first in .85 with
everything answered. What of it is met stands in the table; .92 after seven checks is beyond the all-knowing reckoner too.

## Does a share mean what it says?

Shares of causes after five checks against how often they were so.

${table(['told', 'mean told', 'so', 'causes'], rel)}

## What is taken for what

True causes that were not among the first three after five checks: how often, and what stood first instead.

\`\`\`
${wrong}
\`\`\`
`
}
