import { choice, group, quantity, text } from '../fields.ts'
import { caliper } from './measureWith.ts'

/** Rubber of rings, as shops call it. */
export const sealMaterials = [
  'FKM',
  'FKM for cold',
  'NBR',
  'HNBR',
  'FVMQ',
  'chloroprene',
  'EPDM',
  'silicone',
  'natural rubber',
] as const

/** The ring under a cap or a lid. */
export const ringGroup = group(
  {
    label: 'Ring',
    gloss:
      'The O-ring that seals it: its dash size, or its inside and section; one is chosen where neither stands here.',
    optional: true,
  },
  {
    size: text({
      label: 'Size',
      gloss: 'Dash size of AS568, as 214.',
      maxLength: 12,
      pattern: /^(AS ?568)?[ -]*\d{1,3}$/i,
      patternSays: 'a dash size of one to three digits, as 214 or AS568-214',
      optional: true,
    }),
    inside: quantity('length', {
      label: 'Inside',
      gloss: 'Across the inside of the ring, lying free.',
      unit: 'mm',
      min: 1,
      max: 1000,
      optional: true,
      measure: caliper('lay it on a flat thing and measure across the inside, twice'),
    }),
    section: quantity('length', {
      label: 'Section',
      gloss: 'Thickness of the ring.',
      unit: 'mm',
      min: 0.5,
      max: 20,
      optional: true,
      measure: caliper('close a caliper on it until it only just touches'),
    }),
    material: choice(sealMaterials, {
      label: 'Material',
      gloss: 'Rubber of the ring; ask the shop, colour tells nothing.',
      assumed: { value: 'FKM', why: 'the first choice for petrol; none other is counted on unless said' },
    }),
    seat: choice(['face', 'plug'], {
      label: 'Seat',
      gloss: 'Pressed between two flat faces, or round a plug in a bore.',
      assumed: { value: 'face', why: 'a cap that turns closes on a face' },
    }),
    lines: choice(['along', 'across', 'none'], {
      label: 'Layer lines',
      gloss:
        'How the lines of a printed seat run: along the ring, or across it from inside to outside; none on metal, or on a seat that was sanded and coated.',
      assumed: { value: 'along', why: 'printed with its axis upright and its seat on the bed' },
    }),
    depth: quantity('length', {
      label: 'Groove depth',
      gloss: 'Of a groove already made; one is drawn where this is left out.',
      unit: 'mm',
      min: 0.3,
      max: 20,
      optional: true,
      measure: caliper('measure its depth with the tail of the caliper'),
    }),
    width: quantity('length', {
      label: 'Groove width',
      gloss: 'Of a groove already made.',
      unit: 'mm',
      min: 0.5,
      max: 40,
      optional: true,
      measure: caliper('measure across it'),
    }),
  },
)
