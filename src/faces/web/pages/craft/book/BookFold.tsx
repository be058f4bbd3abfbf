import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { type PaperName, papers } from '../../../../../drawing/papers.ts'
import { ChoiceField } from '../../../parts/ChoiceField.tsx'
import { JobProgress } from '../../../parts/JobProgress.tsx'
import type { Craft } from '../../../state/craftFile.ts'
import { useApp } from '../../../state/hooks.ts'
import { ReadingsForm } from './ReadingsForm.tsx'
import { useBook } from './useBook.ts'

/** The book to build from: made, saved as one PDF or as a folder, and what was written into its boxes typed back. */
export function BookFold({ craft }: { craft: Craft }) {
  const units = useApp((s) => s.units)
  const [paper, setPaper] = useState<PaperName>(units === 'inch' ? 'Letter' : 'A4')
  const book = useBook(craft)
  return (
    <div className="book">
      <p>
        Decisions, drawings of every part, lists to cut, print and get, the order of work, cards for bench and
        bank, and boxes to write readings into; patterns at full size at the end.
      </p>
      {book.busy ? (
        <JobProgress says={book.busy.says} part={book.busy.part} onCancel={book.cancel} />
      ) : (
        <div className="row">
          <ChoiceField
            label="Paper"
            value={paper}
            choices={Object.keys(papers)}
            onChange={(name) => setPaper(name as PaperName)}
          />
          <Button onPress={() => book.make('pdf', paper)}>Make the book</Button>
          <Button className="plain" onPress={() => book.make('zip', paper)}>
            As a folder: a PDF a chapter, drawings, tables
          </Button>
        </div>
      )}
      {book.fault !== undefined && (
        <p role="alert" className="fault">
          The book could not be made: {book.fault}
        </p>
      )}
      {book.last && (
        <details>
          <summary>Type back what was written into the book of {book.last.date}</summary>
          <ReadingsForm boxes={book.last.boxes} key={book.last.date} />
        </details>
      )}
    </div>
  )
}
