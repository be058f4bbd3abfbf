import { choice, count, group, quantity } from '../fields.ts'
import { caliper } from './measureWith.ts'
import { ringGroup } from './sealFields.ts'

/** A filler neck and its thread, as a caliper tells it. */
export const neckGroup = group(
  {
    label: 'Filler neck',
    gloss: 'The thread its cap screws on, for a cap to be made.',
    optional: true,
  },
  {
    thread: choice(['outside', 'inside'], {
      label: 'Thread',
      gloss: 'On the outside of the neck, or inside it.',
      assumed: { value: 'outside', why: 'what most necks have' },
    }),
    'over crests': quantity('length', {
      label: 'Over crests',
      gloss:
        'Across the crests of the neck’s thread: the widest across an outside one, the narrowest across an inside one.',
      unit: 'mm',
      min: 5,
      max: 240,
      exact: true,
      measure: caliper('measure across the crests at three places and take the middle one'),
    }),
    pitches: count({
      label: 'Pitches',
      gloss: 'How many pitches were spanned: one less than the crests counted.',
      min: 1,
      max: 60,
    }),
    span: quantity('length', {
      label: 'Span',
      gloss: 'Along the thread from the first crest to the last of those pitches.',
      unit: 'mm',
      min: 0.3,
      max: 200,
      exact: true,
      measure: caliper('measure from crest to crest along the neck over as many as there are'),
    }),
    'further up': quantity('length', {
      label: 'Further up',
      gloss:
        'Across the crests once more, at the other end of the span: another size than the first tells a taper thread.',
      unit: 'mm',
      min: 5,
      max: 260,
      optional: true,
      measure: caliper('measure across the crests as far from the mouth as the thread goes'),
    }),
    flanks: quantity('angle', {
      label: 'Flanks',
      gloss: 'Between the flanks, where a thread gauge or a photograph told: 60° metric, 55° pipe.',
      unit: 'deg',
      min: 25,
      max: 100,
      optional: true,
    }),
    worn: quantity('length', {
      label: 'Worn',
      gloss: 'How much the crests may have lost across, by wear or because they were printed.',
      unit: 'mm',
      min: 0,
      max: 1.5,
      assumed: { value: 0, low: 0, high: 0.2, why: 'a sound neck' },
    }),
    bore: quantity('length', {
      label: 'Bore',
      gloss: 'Of the neck, inside at its mouth: the ring lies between it and the root of the thread.',
      unit: 'mm',
      min: 3,
      max: 235,
      optional: true,
      measure: caliper('measure across the inside at the mouth'),
    }),
    cap: choice(['bought', 'printed'], {
      label: 'Cap',
      gloss: 'Bought to fit, or to be printed.',
      assumed: { value: 'printed', why: 'a neck is measured because a cap is to be made' },
    }),
    ring: ringGroup,
  },
)
