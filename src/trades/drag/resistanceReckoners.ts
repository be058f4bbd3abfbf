/** Handbook questions of planing and of drag from rest to speed. */
import { inSpeed, inTimes } from '../../base/answers/amounts.ts'
import { degrees, metres, percent, ratio, squareMetres } from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import { gravity, waterAt } from '../../physics/fluid/water.ts'
import { airDrag } from './air.ts'
import { dragAt, prepareDrag } from './drag.ts'
import { angle, deadrise, force, length, mass, out, savitsky, speed, temperature } from './dragPorts.ts'
import { froude, volumetricFroude } from './hullSpec.ts'
import { planingState } from './planing.ts'
import { porpoising, spray } from './planingReckoners.ts'
import { porpoisingLimit, porpoisingNumber } from './porpoising.ts'
import { preparePreplaning, preplaningRatio, transomWettedSurface } from './preplaning.ts'
import { lambdaWindow, settle } from './trimBalance.ts'

const planing = defineReckoner({
  id: 'planing',
  title: 'Planing trim and drag',
  trade: 'hull',
  says: 'Trim at which a straight-bottomed hull settles and what it takes to push it, by balance of three forces. Holds for a wetted length below four beams, trim 2 to 15° and chines wet.',
  inputs: [
    speed,
    mass,
    length('beam', 'Chine beam where it planes.', 0.2, 5),
    deadrise,
    length('centre', 'Centre of all mass, forward of the transom.', 0.1, 10),
    length('centreHeight', 'Centre of all mass above the keel.', 0.02, 3, 0.45),
    length('thrustHeight', 'Thrust line above the keel at the transom.', -1, 2, 0.08),
    angle('thrustAngle', 'Thrust line to the keel, up forward.', -15, 15, 0),
    squareMetres('dragArea', 'Air drag area of rider and craft.', 0, 5, 0.4),
    length('dragHeight', 'Height above the keel where the air pushes.', 0, 3, 0.9),
    length('hullLength', 'Length of bottom there is to wet.', 0.5, 20, 2.4),
    temperature,
  ],
  outputs: [
    out.trim,
    out.drag,
    force('thrust', 'Thrust along its line.'),
    force('friction', 'Friction of the bottom.'),
    force('air', 'Air drag.'),
    ratio('lambda', 'Mean wetted length over beam.'),
    metres('wettedKeel', 'Wetted length of the keel.'),
    metres('wettedChine', 'Wetted length of the chines; negative when they are dry.'),
    degrees('porpoiseTrim', 'Trim above which it may porpoise, ±1.5°.'),
  ],
  reckon: (g) => {
    const water = waterAt(g.temperature)
    const Cv = froude(g.speed, g.beam)
    if (Cv < 0.6)
      throw new RangeError(`speed: ${g.speed} m/s is below 0.6 of √(g × beam), where the planing tests begin`)
    const c = {
      ...water,
      speed: g.speed,
      weight: g.mass * gravity,
      beam: g.beam,
      deadrise: g.deadrise,
      roughness: 4e-4,
      centreHeight: g.centreHeight,
      thrustHeight: g.thrustHeight,
      thrustAngle: g.thrustAngle,
      airDrag: airDrag(g.dragArea, g.speed),
      airHeight: g.dragHeight,
      appendage: 0,
    }
    const s = planingState()
    const window = lambdaWindow(c, g.hullLength)
    if (window.unsupported)
      throw new RangeError(`speed: ${g.speed} m/s is too slow to carry ${g.mass} kg below 20° of trim`)
    const balance = settle(c, g.centre, window, s)
    if (balance === 'mushing')
      throw new RangeError(
        `centre: ${g.centre} m is too far aft, no balance below 20° of trim: the craft ploughs`,
      )
    if (balance === 'bow down')
      throw new RangeError(
        `centre: ${g.centre} m is too far forward, the whole ${g.hullLength} m of bottom would be wet`,
      )
    return {
      trim: s.trim,
      drag: s.drag,
      thrust: s.thrust,
      friction: s.friction,
      air: s.air,
      lambda: s.lambda,
      wettedKeel: s.wettedKeel,
      wettedChine: s.wettedChine,
      porpoiseTrim: porpoisingLimit(porpoisingNumber(s.lift), g.deadrise),
    }
  },
  sources: [savitsky, 'ITTC 1957 friction line with a roughness allowance of 0.0004'],
})

const preplaning = defineReckoner({
  id: 'pre-planing',
  title: 'Drag through the hump',
  trade: 'hull',
  says: 'Drag of a well-trimmed transom-stern hull between displacement and planing, volumetric Froude number 1 to 2. A weight well aft makes it more.',
  inputs: [
    speed,
    mass,
    length('length', 'Waterline length.', 1, 20),
    length('beam', 'Waterline beam.', 0.3, 6),
    length('draft', 'Deepest immersion at rest.', 0.02, 2),
    angle('entrance', 'Half the angle of the waterline at the bow.', 3.7, 28.6, 25),
    percent('transom', 'Immersed transom over largest immersed section.', 0, 1, 0.85),
    temperature,
  ],
  outputs: [out.drag, percent('ratio', 'Drag over weight.'), ratio('froude', 'Volumetric Froude number.')],
  reckon: (g) => {
    const water = waterAt(g.temperature)
    const volume = g.mass / water.density
    const Fv = volumetricFroude(g.speed, volume)
    if (Fv < 1 || Fv > 2)
      throw new RangeError(
        printed(
          say`speed: ${inSpeed(g.speed)} gives a volumetric Froude number of ${inTimes(Fv)}, outside the regression's 1 to 2`,
        ),
      )
    const form = {
      volume,
      length: g.length,
      beam: g.beam,
      draft: g.draft,
      entrance: g.entrance,
      transomRatio: g.transom,
      wettedSurface: transomWettedSurface(volume, g.length, g.beam, g.draft),
    }
    const ratio = preplaningRatio(preparePreplaning(form), Fv, water.kinematicViscosity, 4e-4)
    if (!(ratio > 0)) throw new RangeError('length: with these proportions the regression leaves its range')
    return { drag: ratio * g.mass * gravity, ratio, froude: Fv }
  },
  sources: [
    'Mercier and Savitsky 1973, Resistance of transom-stern craft in the pre-planing regime, SIT-DL-73-1667; coefficients from memory',
  ],
})

const sled = defineReckoner({
  id: 'hull-drag',
  title: 'Drag of a small sled at any speed',
  trade: 'hull',
  says: 'From rest to full plane, with the rider where the drag is least: displacement, hump and planing joined. Give or take 15 %, more through the hump.',
  inputs: [
    { ...speed, min: 0.1 },
    length('length', 'Transom to nose.', 1, 8),
    length('chineBeam', 'Widest breadth of the bottom.', 0.3, 3),
    deadrise,
    length('depth', 'Keel to deck.', 0.08, 1.5, 0.25),
    length('noseRise', 'Rise of the keel at the nose.', 0, 1, 0.15),
    { ...mass, name: 'craftMass', says: 'All but the rider.' },
    length('craftCentre', 'Centre of that mass, forward of the transom.', 0.2, 4),
    { ...mass, name: 'riderMass', says: 'The rider.', assumed: 80 },
    length('riderHeight', 'Centre of the rider above the keel.', 0, 2, 0.85),
    squareMetres('dragArea', 'Air drag area of the rider.', 0, 3, 0.42),
    temperature,
  ],
  outputs: [
    out.drag,
    force('low', 'Low end of its likely range.'),
    force('high', 'High end.'),
    out.trim,
    metres('riderAt', 'Best place of the rider, forward of the transom.'),
    metres('wettedLength', 'Mean wetted length.'),
  ],
  reckon: (g) => {
    const spec = {
      length: g.length,
      chineBeam: g.chineBeam,
      deadrise: g.deadrise,
      depth: g.depth,
      noseRise: g.noseRise,
    }
    const m = prepareDrag(
      spec,
      {
        mass: g.craftMass,
        x: g.craftCentre,
        z: 0.5 * g.depth,
        riderMass: g.riderMass,
        riderRange: [0.15 * g.length, 0.65 * g.length],
        riderHeight: g.riderHeight,
        dragArea: g.dragArea,
        dragHeight: g.riderHeight,
        thrustLine: { height: 0.08, angle: 0 },
      },
      waterAt(g.temperature),
    )
    if (!m.rest.converged)
      throw new RangeError(
        `craftMass: with ${g.craftMass} kg and this rider the hull does not float level enough`,
      )
    const p = dragAt(m, g.speed)
    return {
      drag: p.drag,
      low: p.low,
      high: p.high,
      trim: p.trim,
      riderAt: p.riderAt,
      wettedLength: p.wettedLength,
    }
  },
  sources: [
    savitsky,
    'Mercier and Savitsky 1973, SIT-DL-73-1667',
    'Joining of the methods and range: judgement',
  ],
})

export const dragReckoners: readonly Reckoner[] = [planing, preplaning, sled, porpoising, spray]
