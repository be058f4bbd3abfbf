import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { readCraft } from '../../craft/index.ts'
import { floatAtRest } from '../../trades/drag/dragForm.ts'
import { hullSpecFromCraft } from '../../trades/drag/dragFromCraft.ts'
import { hullMeshFromCraft } from '../mesh/hullFromCraft.ts'
import { meshFloat } from './meshFloat.ts'

describe('the mesh at rest, as the drag methods take it', () => {
  for (const name of ['heron', 'teal'])
    test(`${name}: agrees with strip integrals of the same lines to a part in a hundred`, () => {
      const craft = readCraft(
        readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8'),
      ).craft!
      const mesh = meshFloat(hullMeshFromCraft(craft))(142.5, 0.95, 0.3, 999)
      const strips = floatAtRest(hullSpecFromCraft(craft), 142.5, 0.95, 0.3, 999)
      expect(mesh.converged && strips.converged).toBe(true)
      const [a, b] = [mesh.value, strips.value]
      for (const key of [
        'volume',
        'length',
        'beam',
        'draft',
        'wettedSurface',
        'waterAtTransom',
        'centre',
        'waterplane',
        'section',
      ] as const)
        expect(Math.abs(a[key] / b[key] - 1), key).toBeLessThan(0.01)
      expect(Math.abs(a.trim - b.trim)).toBeLessThan(3e-4)
      expect(Math.abs(a.transomRatio - b.transomRatio)).toBeLessThan(0.02)
      expect(Math.abs(a.entrance - b.entrance)).toBeLessThan(0.05)
    })
  test('a load beyond the hull does not converge', () => {
    const craft = readCraft(readFileSync(resolve(import.meta.dirname, '../../../demo/heron.yaml'), 'utf8'))
      .craft!
    expect(meshFloat(hullMeshFromCraft(craft))(900, 1, 0.2, 999).converged).toBe(false)
  })
})
