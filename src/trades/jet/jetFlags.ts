/** What each flag of a jet point means on the water: the sign to look for and the cheapest next trial. */
import type { JetFlagCode } from './jetTypes.ts'

export const jetFlagTexts: Readonly<Record<JetFlagCode, string>> = {
  stall:
    'Blades stalled: figures are rough. Pull over rotation squared stays low at every rotation. Try a larger nozzle or less pitch growth first.',
  'deep stall':
    'Flow runs backwards at the hub: figures are rough. Check that the nozzle is clear and not too small.',
  cavitation:
    'More than 3 % of the head goes to vapour. Sign: rotation climbs, pull hardly; a roar above the whine. Log pull and rotation tied up and look for the knee.',
  choked:
    'Choked with vapour: it passes no more water however fast it turns, so rotation climbs and pull falls. Close the throttle to a tenth below the knee until it fills again; then slow the impeller or set it deeper.',
  'ram exceeds pump':
    'The boat outruns the impeller: it gives no thrust at this rotation. Sign: no pull on closing the throttle at speed. More rotation brings it back.',
  'no flow':
    'The impeller cannot lift water to the nozzle at this rotation. Sign: it churns without a jet. Prime it lower in the water.',
  'lost prime':
    'Too much air in the water for the pump to hold its prime. Sign: rotation jumps to the limiter in bursts, white jet, hiss. Let the craft move, or seal the seam between intake and hull.',
  'not converged': 'No steady state was found here; the figures are not to be used.',
}
