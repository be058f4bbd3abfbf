/**
 * The stator with its nozzle: vanes that turn the water back along the axis by an even share of their angle, a hub that runs out to a point, a
 * cone down to the nozzle's bore with a short straight lip. Geometry derived; lip of a twentieth of the bore: common practice, no source. Lengths
 * m, angles rad.
 */
import { bladeLoft, type MeanLine } from '../../../shapes/solid/bladeLoft.ts'
import {
  angle,
  defineShape,
  holeOffset,
  inMillimetres,
  length,
  misfit,
  number,
  wanted,
} from './solidShape.ts'

/** Vane that meets the water `inlet` off the axis and leaves along it; unrolled at a radius. */
const vaneLine = (radius: number, axial: number, inlet: number): MeanLine => ({
  angle: (u) => {
    // tan falls evenly from the inlet to nothing
    const x = axial * Math.tan(inlet) * (u - (u * u) / 2)
    return x / radius
  },
  along: (u) => axial * u,
})

export const stator = defineShape({
  title: 'Stator and nozzle',
  values: {
    ring: length('Bore at the impeller', 120, 40, 300),
    hub: length('Hub', 50, 14, 200),
    shaft: length('Shaft hole in the hub', 15, 0, 60),
    vanes: number('Vanes', 7, 3, 15),
    chord: length('Vane length', 60, 15, 250),
    inlet: angle('Vane angle at its front, from the axis', 25, -50, 50),
    thick: length('Vane thickness', 3, 1.2, 10),
    nozzle: length('Nozzle bore', 65, 15, 280),
    cone: angle('Cone, half angle', 10, 4, 30),
    wall: length('Wall', 3, 1.6, 12),
    flange: length('Flange, beyond the wall', 14, 6, 40),
    flangeThick: length('Flange thickness', 6, 3, 20),
    bolts: number('Bolts', 6, 3, 16),
    bolt: length('Bolt hole', 6.4, 3, 13),
    holeOffset,
  },
  build: (b, { n }) => {
    const R = n.ring / 2
    if (n.hub / 2 > R - 6e-3)
      throw misfit(stator, 'hub', n.hub, `must leave 6 mm of passage in a bore of ${inMillimetres(n.ring)}`)
    if (n.nozzle > n.ring - 2e-3)
      throw misfit(stator, 'nozzle', n.nozzle, `must be below the bore of ${inMillimetres(n.ring)}`)
    if ((n.shaft + n.holeOffset) / 2 > n.hub / 2 - 2e-3)
      throw misfit(stator, 'shaft', n.shaft, `leaves less than 2 mm of a hub of ${inMillimetres(n.hub)}`)
    if (n.bolt + n.holeOffset > n.flange - 2e-3)
      throw misfit(stator, 'bolt', n.bolt, `needs a flange wider than ${inMillimetres(n.bolt + 2e-3)}`)
    if (n.thick > 0.6 * ((Math.PI * n.hub) / n.vanes))
      throw misfit(stator, 'thick', n.thick, `closes the passage between ${n.vanes} vanes at the hub`)
    const axial = n.chord * Math.cos(n.inlet / 2)
    // the vanes stand clear of the flange's face
    const start = 2e-3
    const coneAt = start + axial + 2e-3
    const coneLong = (R - n.nozzle / 2) / Math.tan(n.cone)
    const end = coneAt + coneLong + 0.05 * n.ring
    const shell = b.lathe([
      [R, 0],
      [R + n.wall + n.flange, 0],
      [R + n.wall + n.flange, n.flangeThick],
      [R + n.wall, n.flangeThick],
      [R + n.wall, coneAt],
      [n.nozzle / 2 + n.wall, coneAt + coneLong],
      [n.nozzle / 2 + n.wall, end],
      [n.nozzle / 2, end],
      [n.nozzle / 2, coneAt + coneLong],
      [R, coneAt],
    ])
    const tail = Math.min(1.4 * n.hub, coneLong)
    const hub = b.lathe([
      [0, 0],
      [n.hub / 2, 0],
      [n.hub / 2, start + axial],
      [0.28 * n.hub, start + axial + 0.6 * tail],
      [0, start + axial + tail],
    ])
    const sections = Array.from({ length: 13 }, (_, i) => {
      const radius = 0.9 * (n.hub / 2) + ((R + n.wall / 2 - 0.9 * (n.hub / 2)) * i) / 12
      return {
        radius,
        line: vaneLine(radius, axial, n.inlet),
        thickest: n.thick,
        nose: n.thick / 2,
        trailing: Math.min(1e-3, n.thick),
        more: 0,
      }
    })
    const vane = b.moved(b.given(bladeLoft(sections, 40)), 0, 0, start)
    const whole = b.join(shell, hub, b.round(vane, n.vanes))
    const tools = [
      b.round(
        b.moved(
          b.bore((n.bolt + n.holeOffset) / 2, n.flangeThick + 2e-3, -1e-3),
          R + n.wall + n.flange / 2,
          0,
          0,
        ),
        n.bolts,
      ),
    ]
    // the shaft ends in the hub
    if (wanted(n.shaft)) tools.push(b.bore((n.shaft + n.holeOffset) / 2, 0.7 * axial + 1e-3, -1e-3))
    return [{ name: 'stator and nozzle', solid: b.cut(whole, ...tools) }]
  },
})
