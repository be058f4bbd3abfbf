import { choice, flag, group, quantity } from '../fields.ts'

export const riderSection = group(
  { label: 'Rider', gloss: 'The person on board, dressed and wet.' },
  {
    mass: quantity('mass', {
      label: 'Mass',
      gloss: 'Dressed for the water, with buoyancy aid and boots.',
      unit: 'kg',
      min: 20,
      max: 200,
      assumed: { value: 80, low: 60, high: 100, why: 'an adult with wet clothes and a buoyancy aid' },
      measure: { what: 'stand on the scale in the gear you ride in', with: 'bathroom scale', minutes: 2 },
    }),
    height: quantity('length', {
      label: 'Height',
      gloss: 'Stature; sets how high the weight is carried and the frontal area.',
      unit: 'm',
      min: 1,
      max: 2.3,
      assumed: { value: 1.75, low: 1.6, high: 1.9, why: 'an adult' },
      measure: { what: 'mark your height on a door frame', with: 'tape', minutes: 2 },
    }),
    stance: choice(['standing', 'crouching', 'kneeling', 'sitting', 'prone'], {
      label: 'Stance',
      gloss: 'How the rider is on the deck while under way.',
      assumed: { value: 'kneeling', why: 'the usual stance on a craft this small' },
    }),
    position: quantity('length', {
      label: 'Position',
      gloss: 'Middle of the feet, knees or seat, forward of the transom.',
      unit: 'm',
      coarse: 0.03,
      min: -0.5,
      max: 8,
      assumed: {
        of: 'hull.length',
        times: 0.4,
        low: 0.3,
        high: 0.5,
        why: 'a little aft of the middle of the hull, common practice',
      },
      measure: {
        what: 'chalk where you kneel or stand and measure from the transom',
        with: 'tape',
        minutes: 3,
      },
    }),
    moves: flag({
      label: 'Moves under way',
      gloss:
        'Whether the rider shifts along the deck to where the drag is least; no keeps the rider at the position.',
      assumed: {
        value: true,
        why: 'riders of small planing craft shift forward over the hump and aft at speed',
      },
    }),
    'off centre': quantity('length', {
      label: 'Off centre',
      gloss: 'How far the rider is to port of the centreline; starboard is negative.',
      unit: 'm',
      coarse: 0.01,
      min: -1,
      max: 1,
      assumed: { value: 0, low: -0.03, high: 0.03, why: 'a rider keeps to the middle' },
    }),
  },
)
