import type { Mark, Sheet } from '../../../drawing/sheet.ts'
import { num, type SvgShape, shapeOf } from '../../../drawing/svg.ts'

type Attributes = SvgShape['attributes']

interface Drawn {
  node: SVGElement
  tag: string
  attributes: Attributes
  /** what its letters say */
  text?: string
}

const space = 'http://www.w3.org/2000/svg'

/** Paints sheet after sheet into an SVG, touching only what changed. `words` false moves letters and leaves them as they read. */
export type Painter = (sheet: Sheet, words: boolean) => void

/** A painter of one SVG element's own group. */
export function painterOf(svg: SVGSVGElement, group: SVGGElement): Painter {
  const drawn: Drawn[] = []
  let box = ''
  return (sheet, words) => {
    const seen = `0 ${num(-sheet.height)} ${num(sheet.width)} ${num(sheet.height)}`
    if (seen !== box) svg.setAttribute('viewBox', seen)
    box = seen
    for (const [i, mark] of sheet.marks.entries()) {
      const before = drawn[i]
      // between two renderings letters go along as they read
      const shown = mark.kind === 'text' && !words && before?.text ? { ...mark, text: before.text } : mark
      // at height 0: the sheet's own height is in the view box, so that it moves no mark
      const { tag, attributes } = shapeOf(shown, 0)
      const same = before?.tag === tag && fits(before.attributes, attributes)
      const at = same ? before : fresh(tag, before, group)
      drawn[i] = at
      for (const [k, [name, value]] of attributes.entries())
        if (at.attributes[k]?.[1] !== value) at.node.setAttribute(name, value)
      at.attributes = attributes
      if (shown.kind === 'text') write(at, shown)
    }
    for (const extra of drawn.splice(sheet.marks.length)) extra.node.remove()
  }
}

/** the same attributes by name, in the same order */
const fits = (a: Attributes, b: Attributes): boolean =>
  a.length === b.length && a.every(([name], i) => name === b[i]![0])

function fresh(tag: string, before: Drawn | undefined, group: SVGGElement): Drawn {
  const node = document.createElementNS(space, tag) as SVGElement
  if (before) before.node.replaceWith(node)
  else group.append(node)
  return { node, tag, attributes: [] }
}

type Letters = Extract<Mark, { kind: 'text' }>

function write(at: Drawn, mark: Letters): void {
  if (at.text !== mark.text) at.node.textContent = mark.text
  at.text = mark.text
}
