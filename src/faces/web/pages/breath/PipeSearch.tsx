import { useCallback, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { searchedLine } from '../../../../trades/engine/torqueLine.ts'
import type { PipeAnswer } from '../../../../trades/exhaust/exhaustTypes.ts'
import { curveFigure } from '../../../../whole/breath/curveFigures.ts'
import { foundValues, pathsOfFound } from '../../../../whole/breath/foundPipe.ts'
import { type DrawnPipe, pipeFigure } from '../../../../whole/breath/pipeFigure.ts'
import type { PipeSearchAnswer } from '../../../../whole/breath/pipeSearch.ts'
import { inLook, plain, says, saysRpm, saysStep } from '../../../../whole/push/shown.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { SearchState } from '../../parts/SearchState.tsx'
import { app } from '../../state/app.ts'
import { textOf } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { cancelSearch, startSearch, useSearch } from '../../work/searches.ts'
import { textOfFound } from './textOfFound.ts'
import type { Side } from './useBreath.ts'

const widths: Record<string, number> = {
  'only where the craft runs': 0,
  'mostly where the craft runs': 0.3,
  'a wide, gentle curve': 0.8,
}

/** The search for a pipe: asked for, watched, compared with the present one, tried. */
export function PipeSearch({ side, searchKey }: { side: Side; searchKey: string }) {
  const [width, setWidth] = useState('mostly where the craft runs')
  const key = `${searchKey} ${width}`
  const search = useSearch('pipe-search', key)
  const { text, engine } = side.order
  const start = () => startSearch('pipe-search', key, { text, engine, width: widths[width]! })
  return (
    <section className="block search">
      <p>
        Looks for the pipe that gives this craft the most thrust over the speeds it uses, within the room it
        has, with the simulation in the loop. A first answer comes in some seconds, the last one in a minute
        or two; the rest of the app stays usable meanwhile.
      </p>
      <SearchState search={search} onCancel={() => cancelSearch('pipe-search', key)}>
        <div className="row">
          <ChoiceField
            label="What should it be good at"
            value={width}
            choices={Object.keys(widths)}
            onChange={setWidth}
          />
          {!search?.answer?.final && (
            <Button className="main" onPress={start}>
              Search for a pipe
            </Button>
          )}
        </div>
      </SearchState>
      {search?.answer && <Found side={side} answer={search.answer} />}
    </section>
  )
}

const names = { now: 'now', handbook: 'handbook', found: 'found' } as const

function Found({ side, answer }: { side: Side; answer: PipeSearchAnswer }) {
  const units = useApp((s) => s.units)
  const readOnly = useApp((s) => s.role === 'follower')
  const look = lookOf(units, 180)
  const { now, found, handbook, band, final } = answer
  const engine = side.craft.engines[side.view.index]
  const exhaust = engine?.kind === 'two-stroke' ? engine.exhaust : undefined
  const values = foundValues(found.pipe, Math.max(1, exhaust?.pipe.length ?? 1))
  const paths = pathsOfFound(values, side.view.index, exhaust?.stinger !== undefined)
  const texts = textOfFound(paths, units)
  const nothingNew = texts.every(([path, , to]) => textOf(side.craft, path, units) === to)
  const draw = (what: 'torque' | 'power') => (w: number) =>
    curveFigure(
      {
        what,
        lines: [now, found].map((p) => searchedLine(names[p.name], p.curve.rpm, p.curve.torque)),
        used: band.to > band.from ? { ...band, label: 'used on the water' } : undefined,
      },
      lookOf(units, w),
    )
  // biome-ignore lint/correctness/useExhaustiveDependencies: draw depends on these alone
  const power = useCallback(draw('power'), [answer, units])
  const pipe = useCallback(
    (w: number) =>
      pipeFigure(
        withDuct(side.view.pipe!, found.pipe),
        side.view.pipe && { name: 'now', pipe: side.view.pipe },
        lookOf(units, w),
      ),
    [side.view, found, units],
  )
  return (
    <>
      <p className="says" role="status">
        {final ? 'Found' : 'A first answer'}:{' '}
        {nothingNew
          ? `nothing better than the present pipe${final ? '' : ' so far'}.`
          : sentence(now, found, look)}{' '}
        {final ? '' : 'The search goes on from here.'}
      </p>
      <Figure
        draw={power}
        caption={`Now against found, ${found.cells} cells${final ? '' : '; fine cells decide at the end'}.`}
        name="now against found"
      />
      {side.view.pipe && !nothingNew && (
        <Figure
          draw={pipe}
          caption="The pipe found, to scale; dashed is the one there is now."
          name="pipe found"
        />
      )}
      {!nothingNew && (
        <div className="row">
          <Button
            className="main"
            isDisabled={readOnly}
            onPress={() => app.tryAll(texts, 'try the pipe found')}
          >
            Try these
          </Button>
          <span className="quiet">
            {values.fit === 'joined' &&
              `The file’s pipe has ${values.parts.length} parts, the one found ${found.pipe.segments.length}: the cones that bend least are joined, so the tried curve differs a little.`}
            {values.fit === 'split' && 'Long cones are split so that the file’s parts all have a value.'}
          </span>
        </div>
      )}
      {answer.next.length > 0 && (
        <NumbersTable
          caption="One small change from there"
          columns={[
            { head: 'Change' },
            { head: 'Power peak', unit: 'rpm' },
            { head: 'Torque', unit: look.torque },
            { head: answer.speeds.length > 0 ? 'Mean thrust' : 'Pull', unit: look.force },
          ]}
          rows={answer.next.map((c) => [
            c.says,
            signed(c.peakAt, 0),
            signed(inLook(c.torque, 'torque', look), 2),
            signed(inLook(c.thrust, 'force', look), 1),
          ])}
        />
      )}
      <FindingsList findings={answer.findings} title="What the search found" />
      <NumbersTable
        caption="Now, handbook and found"
        columns={[
          { head: 'Pipe' },
          { head: 'Mean thrust', unit: look.force },
          { head: 'Pull', unit: look.force },
          { head: 'Pulls at', unit: 'rpm' },
          { head: 'Most power', unit: look.power },
          { head: 'At', unit: 'rpm' },
          { head: 'Exhaust', unit: look.temperature },
          { head: 'Behind the pipe', unit: look.pressure },
          { head: 'Cells' },
        ]}
        rows={[now, handbook, found].map((p) => [
          names[p.name],
          plain(inLook(p.thrust, 'force', look), 0),
          plain(inLook(p.pull, 'force', look), 0),
          plain(p.pullAt, 0),
          plain(inLook(p.power, 'power', look), 2),
          plain(p.peakAt, 0),
          plain(inLook(p.curve.exhaustT, 'temperature', look), 0),
          plain(inLook(p.curve.gauge, 'pressure', look), 1),
          p.cells,
        ])}
      />
    </>
  )
}

const signed = (v: number, places: number) => `${v > 0 ? '+' : ''}${plain(v, places)}`

type Look = ReturnType<typeof lookOf>

function sentence(now: PipeAnswer, found: PipeAnswer, look: Look): string {
  const most = (p: PipeAnswer) => {
    const last = p.curve.rpm.at(-1) ?? 0
    // the search looks at the speeds that the jet can reach: a pipe tuned for more is still rising there
    const rising = p.peakAt >= 0.998 * last ? ' and still rising' : ''
    return `${says(p.power, 'power', look)} at ${saysRpm(p.peakAt / 60)}${rising}`
  }
  const power = `${most(found)}, now ${most(now)}`
  if (!Number.isFinite(found.thrust) || !Number.isFinite(now.thrust)) return `${power}.`
  return `${saysStep(found.thrust - now.thrust, 'force', look)} of mean thrust, ${saysStep(found.pull - now.pull, 'force', look)} of pull; ${power}.`
}

/** the pipe found with the duct of the cylinder before it and the same muffler behind it */
function withDuct(present: DrawnPipe, found: PipeAnswer['pipe']): DrawnPipe {
  const duct = present.segments.filter((s) => s.inCylinder)
  const stinger = {
    name: 'stinger',
    length: found.stinger.length,
    d0: found.stinger.bore,
    d1: found.stinger.bore,
  }
  return { ...present, segments: [...duct, ...found.segments, stinger] }
}
