import { choice, group, quantity } from '../fields.ts'
import { inlet } from './inletFields.ts'
import { caliper } from './measureWith.ts'
import { exhaustPort, transferPorts } from './portsFields.ts'

/**
 * What a home builder can measure of a two-stroke engine. Defaults and ranges are engineering
 * judgement unless a field says otherwise: common practice, no source.
 */
export const twoStroke = {
  tune: choice(['utility', 'sport', 'race'], {
    label: 'Tune',
    gloss: 'What the engine was built for; sets the defaults of ports and carburettor.',
    assumed: { value: 'utility', why: 'most home-built craft take their engine from a machine' },
  }),
  cooling: choice(['air', 'water'], {
    label: 'Cooling',
    gloss: 'Fan and fins, or water round the cylinder.',
    assumed: { value: 'air', why: 'utility engines' },
  }),
  bore: quantity('length', {
    label: 'Bore',
    gloss: 'Inside diameter of the cylinder.',
    unit: 'mm',
    min: 15,
    max: 120,
    measure: caliper('measure in two directions at the top of the skirt travel', 5),
  }),
  stroke: quantity('length', {
    label: 'Stroke',
    gloss: 'From top to bottom dead centre.',
    unit: 'mm',
    min: 10,
    max: 120,
    measure: { what: 'measure the depth to the crown at top and bottom', with: 'depth gauge', minutes: 5 },
  }),
  rod: quantity('length', {
    label: 'Rod length',
    gloss: 'Between the centres of big and little end.',
    unit: 'mm',
    min: 15,
    max: 300,
    assumed: { of: 'stroke', times: 1.93, low: 1.8, high: 2.1, why: 'small two-strokes' },
    measure: caliper('measure between the edges of both eyes and add half of each bore', 10),
  }),
  ports: group(
    { label: 'Ports', gloss: 'The windows in the cylinder wall.' },
    { exhaust: exhaustPort, transfers: transferPorts },
  ),
  inlet,
  carburettor: group(
    { label: 'Carburettor', gloss: 'What meters the air and fuel.' },
    {
      bore: quantity('length', {
        label: 'Bore',
        gloss: 'Of the venturi, not of the spigot.',
        unit: 'mm',
        min: 4,
        max: 60,
        assumed: {
          by: 'tune',
          each: {
            utility: { of: 'bore', times: 0.3, low: 0.25, high: 0.36, why: 'utility engines' },
            sport: { of: 'bore', times: 0.45, low: 0.38, high: 0.52, why: 'sport engines' },
            race: { of: 'bore', times: 0.55, low: 0.48, high: 0.62, why: 'racing engines' },
          },
          why: 'usual for the tune of the engine',
        },
        measure: caliper('measure the narrowest part'),
      }),
      discharge: quantity('ratio', {
        label: 'Discharge',
        gloss: 'Part of the venturi area the flow really uses.',
        unit: '',
        min: 0.3,
        max: 1,
        assumed: { value: 0.85, low: 0.78, high: 0.9, why: 'carburettor venturis' },
      }),
    },
  ),
  combustion: group(
    { label: 'Combustion chamber', gloss: 'The space above the piston and how the charge burns in it.' },
    {
      volume: quantity('volume', {
        label: 'Volume',
        gloss: 'With the piston at the top, without the thread of the plug.',
        unit: 'cm³',
        min: 0.3,
        max: 200,
        optional: true,
        measure: {
          what: 'fill with thin oil through the plug hole at top dead centre, three times, and take off the thread',
          with: 'syringe',
          minutes: 20,
        },
      }),
      'compression ratio': quantity('ratio', {
        label: 'Compression ratio',
        gloss: 'Over the whole stroke; the volume above goes first when both are given.',
        unit: '',
        min: 3,
        max: 25,
        optional: true,
      }),
      'trapped compression ratio': quantity('ratio', {
        label: 'Trapped compression ratio',
        gloss: 'From the closing of the exhaust; used when neither volume nor ratio is given.',
        unit: '',
        min: 3,
        max: 15,
        assumed: { value: 6.5, low: 5.5, high: 7.5, why: 'engines for pump petrol' },
      }),
      'burn duration': quantity('angle', {
        label: 'Burn duration',
        gloss: 'Crank angle from first flame to the end of burning.',
        unit: 'deg',
        min: 20,
        max: 120,
        assumed: { value: 50, low: 45, high: 60, why: 'spark-ignition two-strokes at speed' },
      }),
      'burn delay': quantity('angle', {
        label: 'Burn delay',
        gloss: 'Crank angle from spark to first flame.',
        unit: 'deg',
        min: 0,
        max: 40,
        assumed: { value: 10, low: 8, high: 14, why: 'spark-ignition two-strokes at speed' },
      }),
    },
  ),
  crankcase: group(
    { label: 'Crankcase', gloss: 'The pump under the piston.' },
    {
      'compression ratio': quantity('ratio', {
        label: 'Compression ratio',
        gloss: 'Volume with the piston at the top over volume with it at the bottom, transfers included.',
        unit: '',
        min: 1.1,
        max: 2,
        assumed: { value: 1.38, low: 1.25, high: 1.5, why: 'small two-strokes' },
        measure: {
          what: 'fill case and transfers with oil at bottom dead centre',
          with: 'measuring cup',
          minutes: 30,
        },
      }),
    },
  ),
  ignition: group(
    { label: 'Ignition', gloss: 'When the spark comes.' },
    {
      advance: quantity('angle', {
        label: 'Advance',
        gloss: 'Crank angle before top dead centre, at speed.',
        unit: 'deg',
        min: 0,
        max: 50,
        assumed: { value: 22, low: 14, high: 28, why: 'small two-strokes' },
        measure: { what: 'read the mark with a timing lamp', with: 'timing lamp', minutes: 10 },
      }),
    },
  ),
  mixture: group(
    { label: 'Mixture', gloss: 'Air, fuel and oil.' },
    {
      lambda: quantity('ratio', {
        label: 'Air ratio',
        gloss: 'Air over the air the fuel needs; below 1 is rich.',
        unit: '',
        min: 0.6,
        max: 1.3,
        assumed: { value: 0.87, low: 0.8, high: 0.95, why: 'set a little rich, for cooling' },
        measure: { what: 'read the plug after a cut at full throttle', with: 'plug spanner', minutes: 15 },
      }),
      oil: quantity('ratio', {
        label: 'Oil',
        gloss: 'Oil over petrol, by volume.',
        unit: '%',
        min: 0.5,
        max: 15,
        assumed: { value: 3, low: 2, high: 5, why: 'about one to thirty-three' },
      }),
    },
  ),
  friction: quantity('ratio', {
    label: 'Friction',
    gloss: 'Friction pressure in pascal = this × stroke in metres × rpm.',
    unit: '',
    min: 20,
    max: 1000,
    assumed: {
      value: 180,
      low: 150,
      high: 250,
      why: 'rolling bearings: 150 for utility engines, 250 for racing ones',
    },
  }),
} as const
