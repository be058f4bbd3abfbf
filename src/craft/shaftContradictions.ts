/** What in the chain of the shaft contradicts something else: a chain that misses its impeller, an engine that is not there. */
import { nearest } from '../base/units/near.ts'
import { type Contradiction, failing, shown, type Test } from './contradiction.ts'
import type { Craft } from './schema/craftSchema.ts'

type Link = Craft['shaft'][number]

const isMass = (l: Link | undefined) => l?.kind === 'engine' || l?.kind === 'impeller'

/** A fault of the order of the chain, at the kind of one of its links. */
function wrong(i: number, found: string, expected: string): Contradiction {
  return { path: `shaft.${i}.kind`, found, expected, severity: 'error' }
}

export function inShaft(craft: Craft): Contradiction[] {
  const { shaft } = craft
  if (shaft.length === 0) return []
  return [...inOrder(craft), ...shaft.flatMap((link, i) => inLink(link, i))]
}

function inOrder({ shaft, engines, drive }: Craft): Contradiction[] {
  const found: Contradiction[] = []
  const last = shaft.length - 1
  if (shaft[0]?.kind !== 'engine')
    found.push(wrong(0, `a chain that begins with ${article(shaft[0])}`, 'an engine as its first link'))
  if (shaft[last]?.kind !== 'impeller')
    found.push(wrong(last, `a chain that ends with ${article(shaft[last])}`, 'the impeller as its last link'))
  let belt = false
  shaft.forEach((link, i) => {
    if (link.kind === 'impeller' && i < last)
      found.push(wrong(i, 'an impeller with more behind it', 'the impeller as its last link, once'))
    if (i > 0 && isMass(link) && isMass(shaft[i - 1]))
      found.push(
        wrong(i, `${article(link)} right behind ${article(shaft[i - 1])}`, 'a coupling between them'),
      )
    if (link.kind === 'engine' && belt && drive.ratio.value !== 1)
      found.push(wrong(i, 'an engine behind the belt', 'all engines in front of the belt'))
    if (link.kind === 'belt') belt = true
  })
  return [...found, ...ofEngines(shaft, engines)]
}

function ofEngines(shaft: Craft['shaft'], engines: Craft['engines']): Contradiction[] {
  const found: Contradiction[] = []
  const names = engines.map((e, i) => e.name ?? `engine ${i + 1}`)
  const links = shaft.flatMap((link, i) => (link.kind === 'engine' ? [{ link, i }] : []))
  if (links.length > engines.length)
    found.push(
      wrong(
        links[engines.length]?.i ?? 0,
        `${links.length} engines in the chain`,
        `no more than the ${engines.length} under engines`,
      ),
    )
  for (const { link, i } of links) {
    if (link.name === undefined || engines.some((e) => e.name === link.name)) continue
    const near = nearest(link.name, names)
    found.push({
      path: `shaft.${i}.name`,
      found: `"${link.name}"`,
      expected: `one of ${names.join(', ')}${near ? `; "${near}" is nearest` : ''}`,
      severity: 'error',
    })
  }
  return found
}

const article = (l: Link | undefined): string =>
  l === undefined ? 'nothing' : l.kind === 'engine' || l.kind === 'impeller' ? `an ${l.kind}` : `a ${l.kind}`

function inLink(link: Link, i: number): Contradiction[] {
  if (link.kind === 'shaft')
    return failing([
      [
        link.bore.value >= link.diameter.value,
        link.bore,
        'mm',
        `a bore smaller than the diameter of ${shown(link.diameter, 'mm')}`,
      ],
      [
        link.overhang.value > link.length.value,
        link.overhang,
        'mm',
        `an overhang no longer than the shaft of ${shown(link.length, 'mm')}`,
      ],
    ])
  if (link.kind !== 'coupling') return []
  const tests: Test[] = [
    [
      link.soft.value > link.thickness.value * (1 + 1e-9),
      link.soft,
      'mm',
      `no more plastic than the whole thickness of ${shown(link.thickness, 'mm')}`,
    ],
    [
      link.number.value * 1.6e-3 * Number(link.bolts.slice(1)) > Math.PI * link.circle.value,
      link.circle,
      'mm',
      `a circle that ${link.number.value} heads of ${link.bolts} have room on`,
    ],
  ]
  const found = failing(tests)
  if (link.sleeves && (link.made === 'aluminium' || link.made === 'steel'))
    found.push({
      path: `shaft.${i}.sleeves`,
      found: `sleeves in ${link.made}`,
      expected: 'no sleeves: metal takes the clamp by itself',
      severity: 'warning',
    })
  return found
}
