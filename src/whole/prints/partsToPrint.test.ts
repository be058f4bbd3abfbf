import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readCraft } from '../../craft/index.ts'
import { prepareBlades } from '../../trades/jet/blades.ts'
import { jetFromCraft } from '../../trades/jet/jetFromCraft.ts'
import { makeSolid } from '../../trades/prints/solids/makeSolid.ts'
import { lookAt } from '../look.ts'
import { partsToPrint } from './partsToPrint.ts'

const text = readFileSync(join(import.meta.dirname, '../../../demo/heron.yaml'), 'utf8')
const craft = readCraft(text).craft!
const { findings } = lookAt(craft, { ranges: false })
const parts = partsToPrint(craft, findings)
const impeller = parts.find((p) => p.id === 'impeller-1')!

test('the impeller carries what is found of the roots of its blades where the jet is solved', () => {
  expect(impeller.findings.map((f) => f.id)).toContain('jet.root')
})

test('the set spans what the search over the whole balance leaves in doubt, the file’s own pitch first where it is among them', () => {
  const found = findings.find((f) => f.id === 'push.pitch')!
  const set = parts.filter((p) => p.id.startsWith('impeller')).map((p) => p.solid!.values['pitch'] as number)
  expect(set[0]).toBe(
    found.act === undefined ? craft.jet.rotor.pitch.value : Math.round(2e3 * found.value!) / 2e3,
  )
  expect(Math.min(...set)).toBeLessThan(found.low! + 0.3e-3)
  expect(Math.max(...set)).toBeGreaterThan(found.high! - 0.3e-3)
})

test('where the pitch of the file is not among the good ones, the best one is printed first', () => {
  const f = {
    ...findings.find((x) => x.id === 'push.pitch')!,
    value: 0.09,
    low: 0.086,
    high: 0.095,
    act: 'print another',
  }
  const set = partsToPrint(craft, [f]).filter((p) => p.id.startsWith('impeller'))
  expect(set.map((p) => p.solid!.values['pitch'])).toEqual([0.09, 0.086, 0.095])
})

test('the impeller made is the one solved: the same ring, gap, hub, pitches, edges and wrap', () => {
  const { rotor } = jetFromCraft(craft)
  expect(impeller.solid!.values).toMatchObject({
    ring: rotor.tipDiameter,
    gap: rotor.gap,
    hub: rotor.hubDiameter,
    blades: rotor.blades,
    hand: rotor.hand,
    pitch: rotor.pitchLeading,
    pitchOut: rotor.pitchTrailing,
    wrap: rotor.wrap,
    trailing: rotor.trailingEdge,
    nose: rotor.leadingEdgeRadius,
    root: rotor.rootThickness,
  })
})

test('angles read on its mesh are those of the blades that were solved, within 0.2 degrees', async () => {
  const blades = prepareBlades(jetFromCraft(craft).rotor)
  const { measured } = await makeSolid(impeller.solid!)
  for (const { radius, read } of measured!) {
    const strip = blades.r2.reduce(
      (best, r, i) => (Math.abs(r - radius) < Math.abs(blades.r2[best]! - radius) ? i : best),
      0,
    )
    // the strip's own pitch at the radius that was read
    const pitch = 2 * Math.PI * blades.r2[strip]! * Math.tan(Math.PI / 2 - blades.lambda2[strip]!)
    const solved = Math.atan2(pitch, 2 * Math.PI * radius)
    for (const angle of read) expect((Math.abs(angle - solved) * 180) / Math.PI).toBeLessThan(0.2)
  }
})
