import { choice, flag, group, quantity } from '../fields.ts'

/** The tube that brings air to the carburettor from above the spray. */
export const snorkelGroup = group(
  {
    label: 'Air intake',
    gloss: 'The tube that brings air down to the carburettor, when there is one.',
    optional: true,
  },
  {
    bore: quantity('length', {
      label: 'Bore',
      gloss: 'Inside diameter of the narrowest tube.',
      unit: 'mm',
      min: 5,
      max: 150,
      measure: { what: 'measure across the inside of the tube', with: 'caliper', minutes: 1 },
    }),
    length: quantity('length', {
      label: 'Length',
      gloss: 'From its mouth to the air box or carburettor.',
      unit: 'mm',
      min: 20,
      max: 4000,
      measure: { what: 'measure along the tube', with: 'string and tape', minutes: 2 },
    }),
    bends: quantity('ratio', {
      label: 'Bends',
      gloss: 'Right angles it turns through in all.',
      unit: '',
      min: 0,
      max: 12,
      exact: true,
      assumed: { value: 2, low: 1, high: 3, why: 'up to the handle and over' },
    }),
    'bend shape': choice(['smooth', 'mitred'], {
      label: 'Bend shape',
      gloss: 'Swept elbows, or square corners.',
      assumed: { value: 'smooth', why: 'hose or swept elbows' },
    }),
    inside: choice(['smooth', 'corrugated'], {
      label: 'Inside',
      gloss: 'Smooth tube or corrugated hose.',
      assumed: { value: 'smooth', why: 'plastic or rubber tube' },
    }),
    'bell mouth': flag({
      label: 'Bell mouth',
      gloss: 'The mouth is flared or rounded.',
      assumed: { value: false, why: 'a plain cut end unless said' },
    }),
    box: quantity('volume', {
      label: 'Air box',
      gloss: 'Volume between the tube and the carburettor; nought without one.',
      unit: 'L',
      min: 0,
      max: 50,
      assumed: { value: 0, low: 0, high: 0, why: 'straight onto the carburettor unless said' },
    }),
    height: quantity('length', {
      label: 'Mouth height',
      gloss: 'Mouth above still water, craft loaded.',
      unit: 'mm',
      min: -200,
      max: 2500,
      assumed: { value: 500, low: 250, high: 800, why: 'part of the way up to the handle' },
      measure: { what: 'measure from the waterline to the mouth', with: 'tape', minutes: 3 },
    }),
  },
)
