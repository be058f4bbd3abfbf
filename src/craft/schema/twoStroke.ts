import { choice, count, group, quantity } from '../fields.ts'

/**
 * What a home builder can measure of a two-stroke engine. Defaults and ranges are engineering
 * judgement unless a field says otherwise: common practice, no source.
 */
const wheel = (what: string) => ({ what, with: 'degree wheel and 0.05 mm feeler', minutes: 15 })
const rubbing = (what: string) => ({ what, with: 'paper and pencil', minutes: 10 })
const caliper = (what: string, minutes = 3) => ({ what, with: 'caliper', minutes })

const exhaustPort = group(
  { label: 'Exhaust port', gloss: 'The window the burnt gas leaves by.' },
  {
    opens: quantity('angle', {
      label: 'Opens',
      gloss: 'Crank angle after top dead centre at the first light gap under the roof.',
      unit: 'deg',
      min: 70,
      max: 130,
      assumed: {
        by: 'tune',
        each: {
          utility: { value: 100, low: 96, high: 108, why: 'utility engines' },
          sport: { value: 94, low: 90, high: 98, why: 'sport engines' },
          race: { value: 88, low: 82, high: 92, why: 'racing engines' },
        },
        why: 'usual for the tune of the engine',
      },
      measure: wheel('turn the crank until light first shows at the port roof'),
    }),
    width: quantity('length', {
      label: 'Width',
      gloss: 'Of all exhaust windows together, straight across the opening.',
      unit: 'mm',
      min: 5,
      max: 120,
      assumed: { of: 'bore', times: 0.6, low: 0.45, high: 0.7, why: 'one window as wide as the ring allows' },
      measure: rubbing('take a rubbing of the window inside the bore'),
    }),
    windows: count({
      label: 'Windows',
      gloss: 'Number of exhaust windows.',
      min: 1,
      max: 4,
      assumed: { value: 1, low: 1, high: 1, why: 'one window is usual' },
    }),
    height: quantity('length', {
      label: 'Height',
      gloss:
        'From floor to roof of the window; the floor is taken at the crown with the piston at the bottom when left out.',
      unit: 'mm',
      min: 2,
      max: 100,
      optional: true,
      measure: caliper('measure the depth to roof and floor with the piston at the bottom', 5),
    }),
    'corner radius': quantity('length', {
      label: 'Corner radius',
      gloss: 'Rounding of the corners of the window.',
      unit: 'mm',
      min: 0,
      max: 40,
      assumed: { of: 'ports.exhaust.width', times: 0.15, low: 0.05, high: 0.3, why: 'cast windows' },
      measure: rubbing('take a rubbing of the window inside the bore'),
    }),
    discharge: quantity('ratio', {
      label: 'Discharge',
      gloss: 'Part of the open area the flow really uses.',
      unit: '',
      min: 0.3,
      max: 1,
      assumed: { value: 0.75, low: 0.65, high: 0.82, why: 'exhaust ports of small two-strokes' },
    }),
  },
)

const transferPorts = group(
  { label: 'Transfer ports', gloss: 'The windows the fresh charge enters by.' },
  {
    opens: quantity('angle', {
      label: 'Opens',
      gloss: 'Crank angle after top dead centre, mean of all transfers.',
      unit: 'deg',
      min: 90,
      max: 150,
      assumed: { of: 'ports.exhaust.opens', plus: 23, low: 18, high: 28, why: 'usual blowdown' },
      measure: wheel('turn the crank until light first shows at the transfer roofs'),
    }),
    windows: count({
      label: 'Windows',
      gloss: 'Number of transfer windows.',
      min: 1,
      max: 10,
      assumed: { value: 4, low: 2, high: 5, why: 'loop-scavenged cylinders' },
    }),
    width: quantity('length', {
      label: 'Width of all',
      gloss: 'Widths of all transfer windows added up, straight across each.',
      unit: 'mm',
      min: 5,
      max: 250,
      assumed: {
        by: 'tune',
        each: {
          utility: { of: 'bore', times: 1.1, low: 0.8, high: 1.4, why: 'two windows' },
          sport: { of: 'bore', times: 1.6, low: 1.2, high: 1.8, why: 'four windows' },
          race: { of: 'bore', times: 1.7, low: 1.4, high: 1.9, why: 'five windows' },
        },
        why: 'usual for the tune of the engine',
      },
      measure: rubbing('take rubbings of all windows inside the bore'),
    }),
    height: quantity('length', {
      label: 'Height',
      gloss:
        'From floor to roof; the floor is taken at the crown with the piston at the bottom when left out.',
      unit: 'mm',
      min: 2,
      max: 60,
      optional: true,
      measure: caliper('measure the depth to roof and floor with the piston at the bottom', 5),
    }),
    'entry angle': quantity('angle', {
      label: 'Entry angle',
      gloss: 'Seen from above, between the duct and the line straight in; narrows the opening by its cosine.',
      unit: 'deg',
      min: 0,
      max: 75,
      assumed: { value: 25, low: 10, high: 45, why: 'loop scavenging' },
    }),
    'roof angle': quantity('angle', {
      label: 'Roof angle',
      gloss: 'Slope of the roof of the duct upwards; narrows the opening by its cosine.',
      unit: 'deg',
      min: 0,
      max: 70,
      assumed: { value: 8, low: 0, high: 15, why: 'main transfers' },
      measure: { what: 'hold a protractor against the roof', with: 'protractor', minutes: 5 },
    }),
    'duct length': quantity('length', {
      label: 'Duct length',
      gloss: 'From crankcase to window, along its middle.',
      unit: 'mm',
      min: 10,
      max: 300,
      assumed: { value: 65, low: 50, high: 80, why: 'cylinders of 50 to 150 cm³' },
      measure: { what: 'push a wire through and measure it', with: 'wire', minutes: 5 },
    }),
    discharge: quantity('ratio', {
      label: 'Discharge',
      gloss: 'Part of the open area the flow really uses.',
      unit: '',
      min: 0.3,
      max: 1,
      assumed: { value: 0.72, low: 0.65, high: 0.8, why: 'transfer ports of small two-strokes' },
    }),
    scavenging: choice(['uniflow-like', 'good loop', 'mediocre loop', 'mixing'], {
      label: 'Scavenging',
      gloss:
        'How well the fresh charge pushes the burnt gas out: good loop for four or five ports, mediocre for two.',
      assumed: {
        value: 'mediocre loop',
        why: 'two-port utility cylinders; say good loop for four or five ports',
      },
    }),
  },
)

const inlet = group(
  {
    label: 'Inlet',
    gloss: 'How the charge gets into the crankcase: through a reed, or past the piston skirt.',
  },
  {
    kind: choice(['reed', 'piston port'], {
      label: 'Kind',
      gloss: 'A reed valve, or a window the piston skirt opens.',
      assumed: { value: 'piston port', why: 'utility engines; look behind the carburettor for a reed block' },
    }),
    opens: quantity('angle', {
      label: 'Opens',
      gloss: 'Piston port: crank angle before top dead centre; it closes as far after.',
      unit: 'deg',
      min: 40,
      max: 110,
      assumed: { value: 65, low: 57, high: 80, why: 'piston-port inlets open 115 to 160 degrees in all' },
      measure: wheel('turn the crank until light first shows under the skirt'),
    }),
    width: quantity('length', {
      label: 'Width',
      gloss: 'Piston port: of the window, straight across.',
      unit: 'mm',
      min: 3,
      max: 120,
      assumed: { of: 'bore', times: 0.5, low: 0.35, high: 0.65, why: 'one inlet window' },
      measure: rubbing('take a rubbing of the window inside the bore'),
    }),
    height: quantity('length', {
      label: 'Height',
      gloss: 'Piston port: from floor to roof of the window.',
      unit: 'mm',
      min: 2,
      max: 60,
      assumed: { of: 'bore', times: 0.28, low: 0.2, high: 0.4, why: 'one inlet window' },
      measure: rubbing('take a rubbing of the window inside the bore'),
    }),
    discharge: quantity('ratio', {
      label: 'Discharge',
      gloss: 'Part of the open area the flow really uses.',
      unit: '',
      min: 0.3,
      max: 1,
      assumed: { value: 0.67, low: 0.6, high: 0.75, why: 'reed windows and piston ports' },
    }),
    'tract length': quantity('length', {
      label: 'Tract length',
      gloss: 'From the bell of the carburettor to the reed or the skirt.',
      unit: 'mm',
      min: 20,
      max: 500,
      assumed: { value: 110, low: 60, high: 200, why: 'usual carburettor and stub' },
      measure: { what: 'measure along the middle', with: 'tape', minutes: 3 },
    }),
    petals: count({
      label: 'Petals',
      gloss: 'Reed: number of petals.',
      min: 1,
      max: 12,
      assumed: { value: 4, low: 2, high: 6, why: 'small reed blocks' },
    }),
    'window area': quantity('area', {
      label: 'Window area',
      gloss: 'Reed: open area under all petals together.',
      unit: 'mm²',
      min: 20,
      max: 10000,
      optional: true,
      measure: caliper('measure width and length of each window', 5),
    }),
    'petal length': quantity('length', {
      label: 'Petal length',
      gloss: 'Reed: free length from clamp to tip.',
      unit: 'mm',
      min: 5,
      max: 80,
      assumed: { value: 30, low: 22, high: 38, why: 'small reed blocks' },
      measure: caliper('measure one petal from clamp to tip'),
    }),
    'petal thickness': quantity('length', {
      label: 'Petal thickness',
      gloss: 'Reed: of one petal.',
      unit: 'mm',
      min: 0.05,
      max: 1,
      assumed: { value: 0.35, low: 0.25, high: 0.45, why: 'glass-fibre petals' },
      measure: caliper('measure one petal'),
    }),
    'petal material': choice(['steel', 'glass', 'carbon'], {
      label: 'Petal material',
      gloss: 'Reed: spring steel, glass-epoxy or carbon-epoxy.',
      assumed: { value: 'glass', why: 'the usual material' },
    }),
    'stop height': quantity('length', {
      label: 'Stop height',
      gloss: 'Reed: how far the tip can lift.',
      unit: 'mm',
      min: 1,
      max: 30,
      assumed: { value: 8, low: 6, high: 10, why: 'small reed blocks' },
      measure: caliper('measure under the tip of the stop'),
    }),
  },
)

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
