import { useId, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { pdfOf } from '../../../../drawing/pdf.ts'
import type { Sheet } from '../../../../drawing/sheet.ts'
import { svgOf } from '../../../../drawing/svg.ts'
import { askSheet } from '../../../../whole/asking/askSheet.ts'
import type { RunRanking } from '../../../../whole/faults/rankingTypes.ts'
import type { CraftLog } from '../../../../whole/log/craftLog.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { saveFile } from '../../state/openedFiles.ts'

interface Props {
  craft: Craft
  balance: Balance | undefined
  log: CraftLog
  ranking: RunRanking | undefined
}

/** One page that a stranger can answer from, as PDF, picture or text. */
export function AskFold({ craft, balance, log, ranking }: Props) {
  const id = useId()
  const units = useApp((s) => s.units)
  const [question, setQuestion] = useState('')
  const make = () =>
    askSheet(craft, {
      log,
      units,
      ...(balance ? { balance } : {}),
      ...(ranking ? { ranking } : {}),
      ...(question.trim() ? { question } : {}),
    })
  const pdf = async () => {
    const { sheet } = make()
    await saveFile('question.pdf', (await pdfOf([sheet], sheet.title)) as Uint8Array<ArrayBuffer>)
  }
  return (
    <section>
      <p>
        One page with the craft to scale, its numbers, what happened and what was tried, without names and
        place. Read it through before you hand it on: a name that begins a sentence cannot be told from other
        words.
      </p>
      <div className="blank">
        <label htmlFor={`${id}q`}>Your question</label>
        <input
          id={`${id}q`}
          className="plainfield"
          value={question}
          maxLength={300}
          autoComplete="off"
          onChange={(event) => setQuestion(event.target.value)}
        />
      </div>
      <div className="row">
        <Button onPress={() => void pdf()}>Sheet as PDF</Button>
        <Button
          className="plain"
          onPress={() => void pngFrom(make().sheet).then((png) => png && saveFile('question.png', png))}
        >
          As PNG
        </Button>
        <Button className="plain" onPress={() => void saveFile('question.txt', make().text)}>
          As text
        </Button>
      </div>
    </section>
  )
}

/** A drawing as the browser paints it, 200 dots an inch. */
async function pngFrom(sheet: Sheet): Promise<Blob | undefined> {
  const image = new Image()
  image.src = URL.createObjectURL(new Blob([svgOf(sheet)], { type: 'image/svg+xml' }))
  try {
    await image.decode()
    const canvas = document.createElement('canvas')
    const dots = 200 / 25.4
    canvas.width = Math.round(sheet.width * dots)
    canvas.height = Math.round(sheet.height * dots)
    const paint = canvas.getContext('2d')
    if (!paint) return undefined
    paint.fillStyle = '#ffffff'
    paint.fillRect(0, 0, canvas.width, canvas.height)
    paint.drawImage(image, 0, 0, canvas.width, canvas.height)
    return await new Promise((done) => canvas.toBlob((blob) => done(blob ?? undefined), 'image/png'))
  } finally {
    URL.revokeObjectURL(image.src)
  }
}
