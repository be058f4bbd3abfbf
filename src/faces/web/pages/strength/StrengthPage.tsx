import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { worstStanding } from '../../../../base/answers/finding.ts'
import { deckSays } from '../../../../trades/strength/deckAnswer.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { InputLink } from '../../parts/InputLink.tsx'
import { InputsPanel } from '../../parts/InputsPanel.tsx'
import { SourcesFoot } from '../../parts/SourcesFoot.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { BayPictures } from './BayPictures.tsx'
import { Frame } from './Frame.tsx'
import { Hatch } from './Hatch.tsx'
import { HotParts } from './HotParts.tsx'
import { Lightest } from './Lightest.tsx'
import { Numbers } from './StrengthNumbers.tsx'
import { bayLevers } from './strengthLevers.ts'
import { cautions, how } from './strengthWords.ts'
import { type Deck, useDeck } from './useDeck.ts'
import './strength.css'

/** Will it hold? The deck bay by bay, foam beside hot parts, rivets, and what the print of the impeller bears. */
export function StrengthPage() {
  const deck = useDeck()
  const findings = useApp((s) => s.findings.strength) ?? []
  const triedFindings = useApp((s) => s.triedFindings.strength)
  if (!deck) return null
  const { now, tried } = deck
  if (now.answers.length === 0)
    return (
      <>
        <EmptyState
          title="Whether the deck holds is not known yet"
          says="The file names no bay of the deck: the fields you stand, kneel or sit on, their sheet, and what holds them up."
          measures={findings.flatMap((f) => (f.id === 'deck.none' && f.measureNext ? [f.measureNext] : []))}
        >
          <p>
            <InputLink link="deck.bays">Add a bay on the Craft page</InputLink>
          </p>
        </EmptyState>
        <FindingsList findings={findings.filter((f) => f.id !== 'deck.none')} title="What is known already" />
        <HotParts now={now} tried={tried} />
        <Cautions says={cautions} />
      </>
    )
  return <Answered now={now} tried={tried} findings={findings} triedFindings={triedFindings} />
}

interface Props {
  now: Deck
  tried: Deck | undefined
  findings: readonly Parameters<typeof worstStanding>[0][number][]
  triedFindings: readonly Parameters<typeof worstStanding>[0][number][] | undefined
}

function Answered({ now, tried, findings, triedFindings }: Props) {
  const weakest = now.answers.reduce((a, b, i) => (b.margin < now.answers[a]!.margin ? i : a), 0)
  const [picked, setPicked] = useState<number>()
  const bay = Math.min(picked ?? weakest, now.answers.length - 1)
  const answer = useMemo(() => deckSays(now.inputs, now.answers), [now])
  const triedSays = useMemo(() => tried && deckSays(tried.inputs, tried.answers).says, [tried])
  const expected = triedSays && triedSays !== answer.says ? `${triedSays} Was: ${answer.says}` : ''
  useEffect(() => app.expect(expected), [expected])
  const shown = triedFindings && triedFindings.length > 0 ? triedFindings : findings
  return (
    <div className="strength">
      <AnswerHeader
        asks="Will it hold?"
        says={answer.says}
        saysTried={triedSays}
        range={answer.range}
        confidence={answer.confidence}
        standing={findings.length > 0 ? worstStanding(findings) : undefined}
      />
      <fieldset className="switch">
        <legend>Bay</legend>
        {now.answers.map((a, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: bays keep their order and may share a name
          <Button key={`${i} ${a.bay.name}`} aria-pressed={i === bay} onPress={() => setPicked(i)}>
            {a.bay.name}
          </Button>
        ))}
      </fieldset>
      <div className="beside">
        <BayPictures now={now} tried={tried} bay={bay} />
        <InputsPanel inputs={bayLevers(tried ?? now, bay)} />
      </div>
      <FindingsList
        findings={shown}
        title={
          triedFindings && triedFindings.length > 0 ? 'What we found, with what is tried' : 'What we found'
        }
      />
      <Cautions says={cautions} />
      <Numbers now={now} tried={tried} />
      <Lightest key={bay} now={now} tried={tried} bay={bay} />
      <Frame deck={tried ?? now} bay={bay} />
      <Hatch key={`hatch ${bay}`} deck={tried ?? now} bay={bay} />
      <HotParts now={now} tried={tried} />
      <SourcesFoot how={how} sources={shown.flatMap((f) => f.sources)} />
    </div>
  )
}
