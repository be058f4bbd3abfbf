/** What the air of the place does to engines whose power was given for standard air. */
import { inCelsius, inKpa, inPercent } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import { siteOf } from '../../hull/site/site.ts'
import { airShareOf } from '../../trades/engine/enginesFromCraft.ts'

/** One finding where the air moves the engines' power by more than `matters`, a part; none otherwise, nor for motors. */
export function airFindings(craft: Craft, matters: number): Finding[] {
  const shares = craft.engines.map((_, i) => airShareOf(craft, i))
  const index = shares.reduce((most, s, i) => (Math.abs(s - 1) > Math.abs(shares[most]! - 1) ? i : most), 0)
  const share = shares[index]!
  if (!(Math.abs(share - 1) > matters)) return []
  const { pressure, temperature } = siteOf(craft).air
  const thin = share < 1
  const path = craft.place.airPressure ? 'place.air pressure' : 'place.altitude'
  return [
    {
      id: 'push.air',
      question: 'push',
      says: say`The air here, ${inKpa(pressure)} at ${inCelsius(temperature)}, leaves the engines ${inPercent(share)} of the power they were given for; that is counted in.`,
      value: share,
      unit: '1',
      standing: thin ? 'watch' : 'good',
      harm: 'costs speed',
      ...(thin
        ? {
            act: 'set the carburettor leaner for thin air: left as it is, it runs rich and loses more than this',
          }
        : {}),
      because: [
        { says: say`air pressure ${inKpa(pressure)}`, link: path },
        { says: say`air temperature ${inCelsius(temperature)}`, link: 'place.air temperature' },
        {
          says: 'their power was given for standard air, 99 kPa dry at 25 °C; say here if it was measured in this air',
          link: `engines.${index}.measured in`,
        },
      ],
      sources: ['SAE J1349 form, friction kept; reference air of ISO 1585:1992'],
    },
  ]
}
