/**
 * A joint of the shaft that slips or has opened, one cause a place: what each does to the sound differs by its place. Signs of slipping and
 * the shares of bolts, breakage and shearing: authored judgement, no source.
 */
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Opened } from '../../trades/driveline/opensFirst.ts'
import type { Cause, Signs, Way } from './causeTypes.ts'

/** A place where the shaft may open. */
export interface Link {
  path: string
  name: string
  /** engines in front of it */
  before: number
  bolted: boolean
  printed: boolean
  /** made so that nobody knows how tight it is */
  byHand: boolean
}

/** Every coupling and hub of the chain; where the file has no chain, one place before the impeller. */
export function linksOf(craft: Craft): readonly Link[] {
  const found: Link[] = []
  let before = 0
  craft.shaft.forEach((link, i) => {
    if (link.kind === 'engine') before++
    if (link.kind !== 'coupling') return
    const ahead = craft.engines[before - 1]?.name ?? `engine ${before}`
    const behind =
      before < craft.engines.length
        ? (craft.engines[before]?.name ?? `engine ${before + 1}`)
        : 'the impeller shaft'
    found.push({
      path: `shaft.${i}`,
      name: `the coupling between ${ahead} and ${behind}`,
      before,
      bolted: true,
      printed: /print/.test(String(link.made)),
      byHand: link.tight === 'by hand',
    })
  })
  const all = craft.engines.length
  if (!found.some((l) => l.before === all))
    found.push({
      path: 'shaft',
      name: 'the joint before the impeller',
      before: all,
      bolted: false,
      printed: false,
      byHand: false,
    })
  return found
}

const slips: Signs = {
  rpm: [0.02, 0.08, 0.35, 0.55],
  pull: [0.85, 0.13, 0.02],
  raced: [0.15, 0.12, 0.73],
  jet: [0.22, 0.05, 0.73],
  heat: [0.25, 0.05, 0.69, 0.01],
  smoke: [0.33, 0.03, 0.63, 0.01],
  lasted: [0.3, 0.05, 0.5, 0.13, 0.02],
  opening: [0.7, 0.06, 0.22, 0.02],
  plug: [0.75, 0.08, 0.09, 0.06, 0.02, 0.01],
  coupling: [0.1, 0.17, 0.4, 0.25, 0.06, 0.02],
}

/** With a jet each the engine whose joint slips is heard to differ. */
const apartFrom: Signs = { engines: [0.35, 0.6, 0.05] }

const open: Signs = {
  ...slips,
  raced: [0.06, 0.08, 0.86],
  jet: [0.05, 0.03, 0.92],
  pull: [0.95, 0.04, 0.01],
  lasted: [0.1, 0.03, 0.07, 0.08, 0.72],
  heat: [0.7, 0.08, 0.18, 0.04],
  smoke: [0.78, 0.1, 0.07, 0.02, 0.03],
  shake: [0.35, 0.1, 0.55],
}

function waysOf(link: Link, between: boolean): Way[] {
  const apart: Signs = between ? { apart: [0.12, 0.88] } : {}
  const opened = { open: link.before }
  return [
    {
      id: 'slips',
      says: 'it slips',
      share: 0.4,
      mend: 60,
      change: { load: [0.8, 0.45], thrust: [0.7, 0.3] },
    },
    {
      id: 'bolts',
      says: link.bolted ? 'its bolts have backed out' : 'its key or screw has come out',
      share: 0.35,
      mend: 15,
      signs: { ...open, ...apart, coupling: [0.03, 0.02, 0.04, 0.02, 0.87, 0.02] },
      change: opened,
    },
    {
      id: 'broken',
      says: link.printed ? 'its printed flange has broken' : 'it has broken',
      share: link.printed ? 0.17 : 0.1,
      mend: 180,
      signs: { ...open, ...apart, coupling: [0.02, 0.02, 0.03, 0.02, 0.04, 0.87] },
      change: opened,
    },
    {
      id: 'sheared',
      says: link.bolted ? 'its bolts have sheared' : 'its key has sheared',
      share: 0.08,
      mend: 60,
      signs: { ...open, ...apart, coupling: [0.02, 0.02, 0.06, 0.02, 0.4, 0.48] },
      change: opened,
    },
  ]
}

/** Causes for every place; the weight is shared by how often each is the first to go. */
export function linkCauses(craft: Craft, opened: readonly Opened[] = []): Cause[] {
  const links = linksOf(craft)
  const shareOf = (l: Link) =>
    opened.filter((o) => o.path.startsWith(l.path)).reduce((a, o) => a + o.share, 0)
  const known = links.reduce((a, l) => a + shareOf(l), 0)
  return links.map((link) => {
    const between = link.before < craft.engines.length
    const even = 1 / links.length
    return {
      id: `coupling:${link.path}`,
      says: say`${link.name} slips or has opened`,
      prior: 7 * (known > 0 ? 0.4 * even + (0.6 * shareOf(link)) / known : even),
      // with a jet each it is one engine's own shaft that opens
      reach: craft.drive.arrangement === 'one shaft' ? 'craft' : 'one',
      change: {},
      signs: craft.drive.arrangement === 'one shaft' ? slips : { ...slips, ...apartFrom },
      ways: waysOf(link, between),
      mendSays: 'bolt it up again: every bolt to its torque, with something that keeps it',
    } satisfies Cause
  })
}
