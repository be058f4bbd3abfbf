import { Button } from 'react-aria-components/Button'
import type { Sentence } from '../../../base/answers/sentence.ts'
import type { Sheet } from '../../../drawing/sheet.ts'
import { svgOf } from '../../../drawing/svg.ts'
import { saveFile } from '../state/openedFiles.ts'
import { Says } from './Says.tsx'

interface Props {
  /** what to look at in the picture, one sentence */
  caption: Sentence | undefined
  /** file name of the saved picture */
  name: string
  /** the picture as it is shown now */
  sheet: () => Sheet | undefined
}

/** What stands under every picture: what to look at, and a button that saves it as SVG. */
export function FigureCaption({ caption, name, sheet }: Props) {
  const save = () => {
    const shown = sheet()
    if (shown) void saveFile(`${name}.svg`, svgOf(shown))
  }
  return (
    <figcaption>
      {caption && (
        <span>
          <Says says={caption} />
        </span>
      )}
      <Button className="plain" aria-label={`Save picture ${name}`} onPress={save}>
        Save picture
      </Button>
    </figcaption>
  )
}
