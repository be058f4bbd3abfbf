/** A hot part and the foam next to it, standing still after a run: how hot its face gets bare, shielded and wrapped. */
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { foamLimit, guarded, guardWord, type HotPart } from './guards.ts'
import { celsius, mm, wholeMm } from './strengthSay.ts'

/** The finding of the i-th hot part. */
export function heat(h: HotPart, i: number): Finding {
  if (h.spot.distance <= h.spot.radius) return foamInside(h, i)
  const limit = foamLimit(h)
  const own = guarded(h, h.guard)
  const standing: Standing = !Number.isFinite(own.face)
    ? 'unknown'
    : own.face > h.foam.hottest
      ? 'stop'
      : own.high > limit
        ? 'watch'
        : 'good'
  return {
    id: `heat.${i}`,
    question: 'strength',
    says: `${h.name}: the foam beside it reaches ${celsius(own.face)} with the part ${guardWord[h.guard]} at ${celsius(h.spot.pipe)}; ${h.foam.id} wants at most ${celsius(limit)}.${needWords(h)}`,
    value: own.face,
    low: own.low,
    high: own.high,
    unit: 'K',
    standing,
    because: [
      { says: `${mm(h.spot.distance)} from its middle to the foam`, link: `hot parts.${i}.distance` },
      ...(['bare', 'shield', 'wrap'] as const).map((guard): Because => {
        const g = guarded(h, guard)
        const needs = Number.isFinite(g.clear)
          ? `${guard === h.guard ? 'it needs' : 'it would need'} ${wholeMm(g.clear)}`
          : 'no distance inside a hull would do'
        return {
          says: `${guardWord[guard]}: ${celsius(g.face)}; ${needs}`,
          ...(guard === h.guard ? {} : { link: `hot parts.${i}.guard` }),
        }
      }),
      {
        says: `still air of ${celsius(h.spot.air)} in the closed bay, 15 K above that outside (judgement, no source): the worst minutes come after the engine stops`,
        link: 'place.air temperature',
      },
      {
        says: 'Caution: polystyrene softens, burns and gives off poisonous smoke; petrol dissolves it. Keep an extinguisher at hand for the first runs',
      },
    ],
    measureNext: {
      what: 'hold a thermometer or heat-marking crayon to the foam face a few minutes after a hard run',
      with: 'thermometer',
      minutes: 10,
      path: `hot parts.${i}.temperature`,
    },
    sources: [
      'Radiation of a long cylinder on a small face, view factor r/s; Stefan-Boltzmann constant, CODATA 2018',
      'Data sheets: EPS and XPS 74 to 75 °C for long',
    ],
  }
}

/** The guard that a part too near still wants, in a sentence; nothing where its own is enough at the hottest it may be. */
function needWords(h: HotPart): string {
  const limit = foamLimit(h)
  if (guarded(h, h.guard).high <= limit) return ''
  const enough = (['shield', 'wrap'] as const).find((g) => g !== h.guard && guarded(h, g).high <= limit)
  if (enough === 'shield') return ' One bright shield with air on both sides is enough.'
  if (enough === 'wrap') return ' A glass wrap on it is enough.'
  return ' No single guard is enough at the hottest it may be: move the foam away or blow air between.'
}

function foamInside(h: HotPart, i: number): Finding {
  return {
    id: `heat.${i}`,
    question: 'strength',
    says: `${h.name}: how hot its foam gets is not known, as the file puts the foam inside the part: ${mm(h.spot.distance)} from its middle, where its skin is at ${mm(h.spot.radius)}.`,
    standing: 'unknown',
    because: [
      {
        says: 'the distance runs from the middle of the part to the face of the foam',
        link: `hot parts.${i}.distance`,
      },
    ],
    sources: ['The craft file'],
  }
}
