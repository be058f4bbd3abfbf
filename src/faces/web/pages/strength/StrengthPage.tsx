import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inTimes } from '../../../../base/answers/amounts.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { deckSays } from '../../../../trades/strength/deckAnswer.ts'
import { Cautions } from '../../parts/Cautions.tsx'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { changeOf } from '../../parts/pageAnswer.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { useFindings } from '../../parts/useFindings.ts'
import { LoadPictures } from './BayPictures.tsx'
import { useDriveParts } from './driveParts.tsx'
import { Frame, frameSays } from './Frame.tsx'
import { Hatch, hatchTitle } from './Hatch.tsx'
import { HotParts, hotSays } from './HotParts.tsx'
import { Lightest } from './Lightest.tsx'
import { Sections } from './Sections.tsx'
import { Numbers } from './StrengthNumbers.tsx'
import { bayLevers } from './strengthLevers.ts'
import { cautions, how } from './strengthWords.ts'
import { type Deck, useDeck } from './useDeck.ts'
import './strength.css'

/** Will it hold? The deck bay by bay, foam beside hot parts, rivets; then shaft and joints as one chain. */
export function StrengthPage() {
  const deck = useDeck()
  const found = useFindings('strength')
  const drive = useDriveParts()
  if (!deck) return null
  const { now, tried } = deck
  if (now.answers.length > 0) return <Answered now={now} tried={tried} />
  return (
    <>
      <EmptyState
        title="Whether the deck holds is not known yet"
        says="The file names no bay of the deck: the fields you stand, kneel or sit on, their sheet, and what holds them up."
        measures={found.now.flatMap((f) => (f.id === 'deck.none' && f.measureNext ? [f.measureNext] : []))}
      >
        <p>
          <InputLink link="deck.bays">Add a bay on the Craft page</InputLink>
        </p>
      </EmptyState>
      <FindingsList findings={found.now.filter((f) => f.id !== 'deck.none')} title="What is known already" />
      {drive.picture}
      <Cautions says={[...cautions, ...drive.cautions]} />
      <Fold id="hot" title="Foam beside hot parts" says={hotSays(now)}>
        <HotParts now={now} tried={tried} />
      </Fold>
      {drive.folds.map((fold) => (
        <Fold key={fold.id} {...fold} />
      ))}
    </>
  )
}

function Answered({ now, tried }: { now: Deck; tried: Deck | undefined }) {
  const weakest = now.answers.reduce((a, b, i) => (b.margin < now.answers[a]!.margin ? i : a), 0)
  const [picked, setPicked] = useState<number>()
  const bay = Math.min(picked ?? weakest, now.answers.length - 1)
  const answer = useMemo(() => deckSays(now.inputs, now.answers), [now])
  const drive = useDriveParts()
  const triedSays = useMemo(() => tried && deckSays(tried.inputs, tried.answers).says, [tried])
  const shown = tried ?? now
  const own = now.answers[bay]!
  return (
    <QuestionPage
      question="strength"
      asks="Will it hold?"
      answer={answer}
      triedSays={triedSays}
      expects={changeOf(answer.says, triedSays)}
      choose={<Bays deck={now} at={bay} onPick={setPicked} />}
      picture={
        <>
          <Sections now={now} tried={tried} bay={bay} />
          {drive.picture}
        </>
      }
      inputs={[...bayLevers(shown, bay), ...drive.inputs]}
      folds={[
        {
          id: 'loads',
          title: 'As the load grows',
          says: say`${own.bay.name} bears ${inTimes(own.margin)} times what is asked`,
          children: <LoadPictures now={now} tried={tried} bay={bay} />,
        },
        {
          id: 'numbers',
          title: 'The numbers',
          says: `${now.answers.length} bays, each under three loads`,
          children: <Numbers now={now} tried={tried} />,
        },
        {
          id: 'lightest',
          title: `The lightest deck that holds you: ${own.bay.name}`,
          says: 'a search over the usual builds',
          children: <Lightest key={bay} now={now} tried={tried} bay={bay} />,
        },
        {
          id: 'frame',
          title: `Where foam cannot go: a frame across ${own.bay.name}`,
          says: frameSays(shown, bay),
          children: <Frame deck={shown} bay={bay} />,
        },
        {
          id: 'hatch',
          title: hatchTitle(shown, bay),
          says: 'what must be put back round it',
          children: <Hatch key={bay} deck={shown} bay={bay} />,
        },
        {
          id: 'hot',
          title: 'Foam beside hot parts',
          says: hotSays(shown),
          children: <HotParts now={now} tried={tried} />,
        },
        ...drive.folds,
      ]}
      cautions={[...cautions, ...drive.cautions]}
      method={[...how, ...drive.method]}
    />
  )
}

function Bays({ deck, at, onPick }: { deck: Deck; at: number; onPick: (bay: number) => void }) {
  return (
    <fieldset className="switch">
      <legend>Bay</legend>
      {deck.answers.map((a, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: bays keep their order and may share a name
        <Button key={`${i} ${a.bay.name}`} aria-pressed={i === at} onPress={() => onPick(i)}>
          {a.bay.name}
        </Button>
      ))}
    </fieldset>
  )
}
