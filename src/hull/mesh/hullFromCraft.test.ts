import { expect, test } from 'vitest'
import { demoCraft } from '../../craft/craft.testkit.ts'
import { floaterOf } from '../afloat/load.ts'
import { metacentricHeight, settle } from '../afloat/settle.ts'
import { hullFromFew } from '../lines/hullBody.ts'
import { measuresOf } from '../lines/measures.ts'
import { hullMeshFromCraft } from './hullFromCraft.ts'

test('the one mesh of a hull gives volume, draft and GM as one of four times the triangles does', () => {
  for (const name of ['heron', 'teal', 'dabchick'] as const) {
    const craft = demoCraft(name)
    const own = hullMeshFromCraft(craft)
    const fine = hullFromFew(
      { ...measuresOf(craft.hull), deckCamber: craft.hull.deckCamber.value },
      { along: 60, bottom: 8, side: 6, deck: 8 },
    )
    expect(fine.mesh.triangles.length).toBeGreaterThan(4 * own.mesh.triangles.length)
    expect(Math.abs(own.volume / fine.volume - 1)).toBeLessThan(2e-3)
    const afloat = [own, fine].map((hull) =>
      settle(
        floaterOf({
          bodies: [{ name: 'hull', mesh: hull.mesh, share: 1 }],
          mass: 142,
          centre: [1, 0, 0.25],
          density: 999,
        }),
      ),
    )
    const [a, b] = afloat as [(typeof afloat)[0], (typeof afloat)[0]]
    expect(Math.abs(metacentricHeight(a.state) - metacentricHeight(b.state))).toBeLessThan(1e-3)
    expect(Math.abs(a.value.h - b.value.h)).toBeLessThan(5e-4)
  }
})

test('a craft that shares its hull section shares the mesh', () => {
  const craft = demoCraft('heron')
  expect(hullMeshFromCraft({ ...craft, rider: { ...craft.rider } })).toBe(hullMeshFromCraft(craft))
})
