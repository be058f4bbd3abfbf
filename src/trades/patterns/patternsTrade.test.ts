import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import { proveFold } from '../../shapes/refold.ts'
import { solveTrade } from '../trade.ts'
import { pipePieces } from './exhaustParts.ts'
import { patternsTrade } from './patternsTrade.ts'

const textOf = (name: string) => readFileSync(`demo/${name}.yaml`, 'utf8')
const solved = (text: string) => solveTrade(patternsTrade, readCraft(text, 'demo').craft!, undefined)
const route = '      route: { flange: [0.78 m, 0 m, 0.40 m], aims: [0.78 m, 0.2 m, 0.40 m], hole: [0 m, 0.24 m, 0.30 m] }\n'
const routed = textOf('dabchick').replace(/^ {6}room: .*\n/m, (room) => route + room)

describe('what is cut and welded for a craft', () => {
  it.each(['dabchick', 'heron', 'sandpiper', 'teal'])('%s: every part has an id of its own, and pieces or a reason why not', (name) => {
    const now = solved(textOf(name))
    const parts = patternsTrade.parts!(now)
    expect(new Set(parts.map((p) => p.id)).size).toBe(parts.length)
    for (const part of parts) {
      expect(part.flats !== undefined || part.findings.length > 0, part.id).toBe(true)
      if (part.mass !== undefined) expect(part.mass, part.id).toBeGreaterThan(0)
      for (const h of part.hours) expect(h.high, part.id).toBeGreaterThan(h.low)
      for (const step of part.steps) expect(printed(step), part.id).not.toMatch(/NaN|undefined|—/)
    }
  })

  it('rolls up again with every edge within a tenth of a millimetre', () => {
    const now = solved(routed)
    const [way] = now.answer.ways
    way!.pipe.parts.forEach((part, k) => {
      if (part.made === 'box') return
      for (const piece of pipePieces('p', 'p', part, way!.route.frames[k]))
        for (const strip of piece.strips) {
          const proof = proveFold(strip)
          expect(proof.edge, part.name).toBeLessThan(1e-4)
          expect(proof.seam, part.name).toBeLessThan(1e-4)
        }
    })
  })

  it('a pipe that misses its hole is told how to reach it, and reaches it so', () => {
    const now = solved(routed)
    const [way] = now.answer.ways
    const said = patternsTrade.judge(now, patternsTrade.limits)
    console.log(said.map((f) => `${f.standing} ${printed(f.says)} → ${f.act ? printed(f.act) : ''}`).join('\n'))
    expect(way!.miss).toBeGreaterThan(1e-3)
    expect(said.find((f) => f.id === 'patterns.end.1')!.standing).toBe('watch')
  })
})
