/** A hot part and the foam next to it, standing still after a run: how hot its face gets bare, shielded and wrapped. */
import { inCelsius, inMm } from '../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { foamLimit, guarded, guardWord, type HotPart } from './guards.ts'
import type { StrengthLimits } from './strengthLimits.ts'

/** The finding of the i-th hot part. */
export function heat(h: HotPart, i: number, limits: StrengthLimits): Finding {
  if (h.spot.distance <= h.spot.radius) return foamInside(h, i)
  const limit = h.foam.hottest - limits.foamBelow.value
  const own = guarded(h, h.guard)
  const need = needSays(h)
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
    says: say`${h.name}: the foam beside it reaches ${inCelsius(own.face)} with the part ${guardWord[h.guard]} at ${inCelsius(h.spot.pipe)}; ${h.foam.id} wants at most ${inCelsius(limit)}.`,
    ...(need === undefined ? {} : { act: need }),
    harm: 'before the water',
    twin: 'heat',
    value: own.face,
    low: own.low,
    high: own.high,
    unit: 'K',
    standing,
    because: [
      { says: say`${inMm(h.spot.distance)} from its middle to the foam`, link: `hot parts.${i}.distance` },
      ...(['bare', 'shield', 'wrap'] as const).map((guard): Because => {
        const g = guarded(h, guard)
        const needs = Number.isFinite(g.clear)
          ? say`${guard === h.guard ? 'it needs' : 'it would need'} ${inMm(g.clear)}`
          : 'no distance inside a hull would do'
        return {
          says: say`${guardWord[guard]}: ${inCelsius(g.face)}; ${needs}`,
          ...(guard === h.guard ? {} : { link: `hot parts.${i}.guard` }),
        }
      }),
      { says: say`${inCelsius(h.spot.air)} round it: ${h.bay.says}`, link: h.bay.link },
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

/** The guard that a part too near still wants; undefined where its own is enough at the hottest it may be. */
function needSays(h: HotPart): Sentence | undefined {
  const limit = foamLimit(h)
  if (guarded(h, h.guard).high <= limit) return undefined
  const enough = (['shield', 'wrap'] as const).find((g) => g !== h.guard && guarded(h, g).high <= limit)
  if (enough === 'shield') return 'one bright shield with air on both sides is enough'
  if (enough === 'wrap') return 'a glass wrap on it is enough'
  const { bay } = h
  const air = bay.known ? bay.high : h.spot.air
  if (air > limit)
    return say`cool the bay first: its air alone may come to ${inCelsius(air)} where the foam wants ${inCelsius(limit)}`
  // worked out with part and bay as hot as they may be, so that the distance holds
  const clear = guarded({ ...h, spot: { ...h.spot, pipe: h.high, air } }, 'shield').clear
  return Number.isFinite(clear)
    ? say`move the foam to ${inMm(clear)} from its middle behind a bright shield, or blow air between`
    : 'no single guard is enough at the hottest it may be: keep foam out of that bay, or blow air between'
}

function foamInside(h: HotPart, i: number): Finding {
  return {
    id: `heat.${i}`,
    question: 'strength',
    says: say`${h.name}: how hot its foam gets is not known, as the file puts the foam inside the part: ${inMm(h.spot.distance)} from its middle, where its skin is at ${inMm(h.spot.radius)}.`,
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
