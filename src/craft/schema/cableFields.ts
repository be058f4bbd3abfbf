import { choice, group, quantity } from '../fields.ts'

const tape = (what: string, minutes = 2) => ({ what, with: 'tape', minutes })

/** Throttle cable, kill cord and wires. */
export const cableSection = group(
  {
    label: 'Throttle cable',
    gloss: 'From the rider’s lever to the carburettor, with what stops the engines.',
    optional: true,
  },
  {
    length: quantity('length', {
      label: 'Length',
      gloss: 'Of the outer.',
      unit: 'm',
      min: 0.1,
      max: 10,
      assumed: { value: 2, low: 1.2, high: 3, why: 'from a handle to the engine' },
      measure: tape('measure along the cable'),
    }),
    bends: quantity('angle', {
      label: 'Bends',
      gloss: 'All bends of the cable added up.',
      unit: 'deg',
      min: 0,
      max: 1440,
      assumed: { value: 180, low: 90, high: 300, why: 'down a handle and along the deck' },
      measure: { what: 'add up how far it turns at each bend', with: 'eye', minutes: 2 },
    }),
    radius: quantity('length', {
      label: 'Tightest bend',
      gloss: 'Radius of the tightest bend.',
      unit: 'mm',
      min: 3,
      max: 2000,
      assumed: { value: 80, low: 50, high: 120, why: 'led without force' },
    }),
    liner: choice(['plastic', 'none'], {
      label: 'Liner',
      gloss: 'A plastic tube inside the outer, or wire on wire.',
      assumed: { value: 'plastic', why: 'the usual cable' },
    }),
    spring: quantity('force', {
      label: 'Return spring',
      gloss: 'With which the carburettor pulls the cable when it is nearly shut, all carburettors together.',
      unit: 'N',
      min: 0,
      max: 300,
      assumed: { value: 12, low: 7, high: 20, why: 'a slide with its spring' },
      measure: {
        what: 'hook a luggage scale to the cable’s end at the carburettor',
        with: 'luggage scale',
        minutes: 4,
      },
    }),
    lever: quantity('force', {
      label: 'Lever drag',
      gloss: 'What the lever or trigger takes to go back by itself, at the cable.',
      unit: 'N',
      min: 0,
      max: 100,
      assumed: { value: 2, low: 1, high: 4, why: 'a thumb lever or trigger, a little sandy' },
    }),
    'lever ratio': quantity('ratio', {
      label: 'Lever ratio',
      gloss: 'How far the finger moves for each part of cable.',
      unit: '',
      min: 0.5,
      max: 12,
      assumed: { value: 2.5, low: 2, high: 3.5, why: 'a thumb lever' },
    }),
    'free travel': quantity('length', {
      label: 'Free travel',
      gloss: 'The inner moves this far before the throttle does.',
      unit: 'mm',
      min: 0,
      max: 30,
      assumed: { value: 2, low: 1, high: 3, why: 'set with the adjuster' },
      measure: { what: 'pull the inner until the slide starts to move', with: 'tape', minutes: 1 },
    }),
    through: choice(['gland', 'air tube', 'open hole'], {
      label: 'Through the deck',
      gloss: 'A gland, the tube that brings air, or a bare hole.',
      assumed: { value: 'gland', why: 'a hull that is meant to stay dry' },
    }),
    thickness: quantity('length', {
      label: 'Thickness',
      gloss: 'Of the outer.',
      unit: 'mm',
      min: 1,
      max: 20,
      assumed: { value: 5, low: 4, high: 6, why: 'the usual cable' },
    }),
    kill: choice(['all engines', 'one engine', 'none'], {
      label: 'Kill cord',
      gloss: 'Which engines the lanyard stops when it is pulled off.',
      optional: true,
    }),
    lanyard: quantity('length', {
      label: 'Lanyard',
      gloss: 'Length of the kill cord from rider to switch.',
      unit: 'm',
      min: 0.1,
      max: 5,
      assumed: { value: 1, low: 0.8, high: 1.2, why: 'from a wrist to the handle' },
    }),
    wiring: choice(['none', 'sealed', 'open'], {
      label: 'Wires near fuel',
      gloss:
        'Switches, relays and joints in the space with petrol: none, sealed against sparks, or open ones.',
      optional: true,
    }),
  },
)
