import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inCm } from '../../../../base/answers/amounts.ts'
import { printedAmount } from '../../../../base/answers/sentence.ts'
import { heightOver } from '../../../../trades/float/openingHeights.ts'
import { useApp } from '../../state/hooks.ts'
import type { UnitSystem } from '../../state/store.ts'
import { createScene, type Scene } from './scene.ts'
import type { Side } from './useFloat.ts'

interface Props {
  side: Side
}

const turn = 0.12
const keys: Record<string, readonly [number, number, number]> = {
  ArrowLeft: [-turn, 0, 1],
  ArrowRight: [turn, 0, 1],
  ArrowUp: [0, turn, 1],
  ArrowDown: [0, -turn, 1],
  '+': [0, 0, 0.9],
  '=': [0, 0, 0.9],
  '-': [0, 0, 1.1],
}

/** The craft in the water in space; turned by mouse, touch and keys. What it shows is also said in words. */
export function ThreeD({ side }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const scene = useRef<Scene>(undefined)
  const from = useRef<{ x: number; y: number }>(undefined)
  const [able, setAble] = useState(true)
  const units = useApp((s) => s.units)
  const { input, live } = side
  const { x, y } = input.rider
  const state = live(x, y)

  useEffect(() => {
    const box = canvas.current
    if (!box) return
    const made = createScene(box)
    if (!made) return setAble(false)
    scene.current = made
    const watch = new ResizeObserver(() => made.resize())
    watch.observe(box)
    return () => {
      watch.disconnect()
      made.end()
      scene.current = undefined
    }
  }, [])
  useEffect(() => {
    const s = live(x, y)
    if (s) scene.current?.show(input, s, able)
  }, [input, live, x, y, able])

  const says = state
    ? `The craft in the water, seen from ahead and above: ${stateWords(state, units)} ${openingWords(side, state)}`
    : 'The rider is off the deck.'
  if (!able)
    return (
      <p className="quiet">
        This browser draws no picture in space; the views to scale above show the same. {says}
      </p>
    )
  const down = (e: PointerEvent) => {
    from.current = { x: e.clientX, y: e.clientY }
    e.currentTarget.setPointerCapture(e.pointerId)
  }
  const go = (e: PointerEvent) => {
    const f = from.current
    if (!f) return
    scene.current?.orbit(-(e.clientX - f.x) * 0.008, (e.clientY - f.y) * 0.008, 1)
    from.current = { x: e.clientX, y: e.clientY }
  }
  const key = (e: KeyboardEvent) => {
    const by = keys[e.key]
    if (!by || e.altKey || e.ctrlKey || e.metaKey) return
    e.preventDefault()
    scene.current?.orbit(...by)
  }
  return (
    <figure className="figure threed">
      <section
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is turned with the arrow keys
        tabIndex={0}
        aria-label="Craft in space: arrow keys turn it, plus and minus bring it nearer"
        onKeyDown={key}
      >
        <canvas
          ref={canvas}
          role="img"
          aria-label={says}
          onPointerDown={down}
          onPointerMove={go}
          onPointerUp={() => (from.current = undefined)}
          onPointerCancel={() => (from.current = undefined)}
        />
      </section>
      <figcaption>
        <span>
          Turn it by dragging or with the arrow keys. The red cross in the hull is the common centre of
          gravity.
        </span>
        <span className="row">
          {(['three quarters', 'from below', 'from astern'] as const).map((word) => (
            <Button key={word} className="plain" onPress={() => scene.current?.lookFrom(word)}>
              {word}
            </Button>
          ))}
        </span>
      </figcaption>
    </figure>
  )
}

function stateWords(s: NonNullable<ReturnType<Side['live']>>, units: UnitSystem): string {
  if (!s.stays) return 'it does not stay upright with its rider there.'
  const deg = (a: number) => `${Math.abs((a * 180) / Math.PI).toFixed(1)}°`
  return `${deg(s.attitude.trim)} bow ${s.attitude.trim > 0 ? 'up' : 'down'}, ${deg(s.attitude.heel)} to ${s.attitude.heel > 0 ? 'port' : 'starboard'}, ${printedAmount(inCm(s.draftAft, 0.1), units)} deep at the stern.`
}

function openingWords(side: Side, s: NonNullable<ReturnType<Side['live']>>): string {
  const under = side.input.openings.filter((o) => o.kind !== 'shaft seal' && heightOver(s.attitude, o.at) < 0)
  return under.length > 0
    ? `Under water: ${under.map((o) => o.name).join(', ')}.`
    : 'No opening is under water.'
}
