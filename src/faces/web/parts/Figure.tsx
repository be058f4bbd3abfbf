import { useCallback, useRef } from 'react'
import type { Sentence } from '../../../base/answers/sentence.ts'
import type { Sheet } from '../../../drawing/sheet.ts'
import { FigureCaption } from './FigureCaption.tsx'
import { SheetSvg, type SpotLink } from './SheetSvg.tsx'

interface Props {
  /** draws the sheet for the room there is, mm; letters stay as large as the page's text. The sheet is drawn again when `draw` is another function. */
  draw: (width: number) => Sheet
  /** what to look at in it, one sentence */
  caption?: Sentence | undefined
  /** file name of the saved picture */
  name?: string
  /** where numbers on it lead */
  spots?: (n: number) => SpotLink | undefined
}

/** A drawing or curve on a white sheet, drawn at the width there is; a button saves it as SVG. */
export function Figure({ draw, caption, name = 'figure', spots }: Props) {
  const shown = useRef<Sheet>(undefined)
  const keep = useCallback((sheet: Sheet) => {
    shown.current = sheet
  }, [])
  return (
    <figure className="figure">
      <SheetSvg draw={draw} onShow={keep} spots={spots} />
      <FigureCaption caption={caption} name={name} sheet={() => shown.current} />
    </figure>
  )
}
