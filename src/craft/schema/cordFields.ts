import { choice, count, group, list, quantity } from '../fields.ts'

const tape = (what: string, minutes = 2) => ({ what, with: 'tape', minutes })

/** The pull-cord from the starter's drum to the handle. */
export const cordSection = group(
  {
    label: 'Pull-cord',
    gloss: 'The cord that starts the engines, from the starter’s drum to the handle.',
    optional: true,
  },
  {
    turns: choice(['one engine', 'all engines'], {
      label: 'Turns over',
      gloss: 'One engine alone, or all of them; by the shaft and its clutch when left out.',
      optional: true,
    }),
    drum: quantity('length', {
      label: 'Drum',
      gloss: 'Diameter the cord lies on in the starter.',
      unit: 'mm',
      min: 10,
      max: 300,
      assumed: { value: 60, low: 45, high: 80, why: 'starters of small engines' },
      measure: { what: 'measure across the bottom of its groove', with: 'caliper', minutes: 5 },
    }),
    thickness: quantity('length', {
      label: 'Thickness',
      gloss: 'Of the cord.',
      unit: 'mm',
      min: 1,
      max: 14,
      assumed: { value: 4, low: 3, high: 5, why: 'starter cord' },
    }),
    material: choice(['nylon', 'polyester', 'aramid'], {
      label: 'Material',
      gloss: 'Of the cord: nylon stretches, aramid hardly does.',
      assumed: { value: 'nylon', why: 'the usual starter cord' },
    }),
    length: quantity('length', {
      label: 'Length',
      gloss: 'From the drum to the handle at rest; what is wound on the drum comes on top.',
      unit: 'm',
      min: 0.05,
      max: 6,
      assumed: { value: 0.8, low: 0.3, high: 1.5, why: 'from the engine to a handle in the deck' },
      measure: tape('measure along the cord'),
    }),
    pull: quantity('length', {
      label: 'Pull',
      gloss: 'How far the handle can be pulled in one go.',
      unit: 'm',
      min: 0.1,
      max: 2.5,
      assumed: { value: 0.8, low: 0.6, high: 1, why: 'an arm’s pull' },
    }),
    handles: count({
      label: 'Handles',
      gloss: 'One cord for all, or a cord for each engine.',
      min: 1,
      max: 8,
      assumed: { value: 1, low: 1, high: 1, why: 'one cord unless said' },
    }),
    fleet: quantity('angle', {
      label: 'Lead-in',
      gloss: 'How far the cord comes onto the drum or a sheave out of its plane.',
      unit: 'deg',
      min: 0,
      max: 60,
      assumed: { value: 2, low: 0, high: 5, why: 'a handle nearly in line' },
    }),
    bends: list(
      { label: 'Bends', gloss: 'Every place where the cord is led round something.', maxItems: 20 },
      group(
        { label: 'Bend', gloss: 'One place.' },
        {
          angle: quantity('angle', {
            label: 'Angle',
            gloss: 'The cord turns through.',
            unit: 'deg',
            min: 1,
            max: 360,
            assumed: { value: 90, low: 80, high: 100, why: 'round one corner' },
          }),
          over: choice(['sheave', 'plastic', 'metal'], {
            label: 'Over',
            gloss: 'A wheel that turns, a plastic eye, or bare metal.',
            assumed: { value: 'plastic', why: 'an eye in the deck' },
          }),
          across: quantity('length', {
            label: 'Across',
            gloss: 'Diameter that it bends round.',
            unit: 'mm',
            min: 1,
            max: 300,
            assumed: { value: 32, low: 20, high: 40, why: 'eight times a cord of 4 mm' },
          }),
        },
      ),
    ),
  },
)
