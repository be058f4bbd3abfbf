/** The trade prints: threads that screw on, rings that seal, what a hand reaches, and the pieces to try first. */
import { inDegrees, inMm, inPercent } from '../../base/answers/amounts.ts'
import type { Limit } from '../../base/answers/limit.ts'
import { type Card, defineTrade, type NumberTable, type Solved } from '../trade.ts'
import { type PrintsAnswer, printsAnswer } from './printsAnswer.ts'
import { type PrintsInputs, printsFromCraft } from './printsFromCraft.ts'
import { printsReckoners } from './printsReckoners.ts'
import { reachFindings } from './reachFindings.ts'
import { sealFindings } from './sealFindings.ts'
import { threadFindings } from './threadFindings.ts'
import { type PrintsLimits, printsLimits } from './threadLimits.ts'
import { tryCards } from './tryCard.ts'

export const printsTrade = defineTrade<PrintsInputs, PrintsAnswer>({
  id: 'prints',
  question: 'make',
  title: 'Printed parts: threads, seals and reach',
  reads: ['tanks', 'openings', 'printer', 'shaft', 'deck', 'rider', 'hull'],
  inputs: printsFromCraft,
  answer: printsAnswer,
  limits: printsLimits,
  judge: ({ inputs, answer }, limits) => {
    const known = limits as PrintsLimits
    return [
      ...threadFindings(inputs, answer, known),
      ...sealFindings(inputs, answer, known),
      ...reachFindings(inputs.reach, known),
    ]
  },
  numbers,
  cards: ({ inputs, answer }): Card[] => tryCards(inputs, answer),
  reckoners: printsReckoners,
  cautions: [
    'A printed fuel cap is a trial: fill it with water first, then petrol outdoors, and smell round it after an hour; no flame, no switch near.',
    'Dust and fumes of printing and sanding: open a window, wear a mask; uncured resin burns skin.',
    'Where a rule asks for a certified fuel fitting, buy one: what stands here is no proof of any rule.',
  ],
  method: [
    'A thread is named by Bayes: how common each of some five hundred is, times how well its limits give the diameter and the pitch that were read, against any thread of no table.',
    'Limits of metric threads are those of ISO 965-1, of unified ones ASME B1.1, of pipe threads ISO 228-1. A printed thread is the basic form moved off its partner by the clearance, with crests as wide as a laid line.',
    'A ring is judged at the worst of all its tolerances, of the printed groove and of swelling. Layer lines across a seat are held against the pressure under which rubber fills them.',
    'Reach is the straight way from the rim of a hatch to what wants looking at, against arms of the rider’s stature.',
  ],
})

/** What passes a hole of a width, and how far: the body sizes that reach is judged by. */
function bodySizes(stature: number): NumberTable {
  const { hand, elbow, shoulder, handReach, elbowReach, shoulderReach } = printsLimits
  const row = (what: string, clear: Limit, far: Limit) => [
    what,
    inMm(clear.value),
    inMm(far.value * stature),
    clear.source,
    far.source,
  ]
  return {
    caption: 'How far an arm comes through a hatch',
    heads: ['Passes', 'Clear width', 'Past the rim', 'Source of the width', 'Source of the reach'],
    rows: [
      row('a hand to the wrist', hand, handReach),
      row('an arm to the elbow', elbow, elbowReach),
      row('an arm to the shoulder', shoulder, shoulderReach),
    ],
  }
}

function numbers({ inputs, answer }: Solved<PrintsInputs, PrintsAnswer>): NumberTable[] {
  const guesses = answer.necks.flatMap((n): NumberTable[] =>
    n.named && n.named.guesses.length > 0
      ? [
          {
            caption: `What the thread of ${n.neck.name} may be`,
            heads: ['Thread', 'Odds', 'Over crests', 'Pitch', 'Flanks'],
            rows: [
              ...n.named.guesses
                .slice(0, 6)
                .map((g) => [
                  g.thread.name,
                  inPercent(g.odds, 0.1),
                  inMm(n.neck.reading.side === 'external' ? g.thread.d : g.thread.d1, 0.01),
                  inMm(g.thread.pitch, 0.001),
                  inDegrees(2 * g.thread.half, 1),
                ]),
              [
                'none of these',
                inPercent(n.named.none, 0.1),
                inMm(n.neck.reading.across, 0.01),
                inMm(n.named.pitch, 0.001),
                '',
              ],
            ],
          },
        ]
      : [],
  )
  const seals = [
    ...answer.necks.flatMap((n) => (n.seal ? [n.seal] : [])),
    ...answer.hatches.map((h) => h.seal),
  ]
  const rings = seals.flatMap((s) =>
    s.seated
      ? [
          [
            s.name,
            s.seated.ring.name,
            inMm(s.seated.gland.seat, 0.01),
            inMm(s.seated.gland.depth, 0.01),
            inMm(s.seated.gland.width, 0.01),
            inPercent(s.seated.state.squeeze.value),
            inPercent(s.seated.state.fill.high),
          ],
        ]
      : [],
  )
  return [
    ...guesses,
    ...(inputs.reach.spots.length > 0 ? [bodySizes(inputs.reach.stature)] : []),
    ...(rings.length > 0
      ? [
          {
            caption: 'Rings and their grooves: a face groove by its outside, a plug’s by its floor',
            heads: ['Where', 'Ring', 'Across', 'Deep', 'Wide', 'Squeezed', 'Filled at most'],
            rows: rings,
          },
        ]
      : []),
  ]
}
