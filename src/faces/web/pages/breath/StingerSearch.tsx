import { useCallback } from 'react'
import { Button } from 'react-aria-components/Button'
import { stingerFigure } from '../../../../whole/breath/stingerFigures.ts'
import type { StingerSearchAnswer } from '../../../../whole/breath/stingerSearch.ts'
import { inLook, plain } from '../../../../whole/push/shown.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { SearchState } from '../../parts/SearchState.tsx'
import { StandingMark } from '../../parts/StandingMark.tsx'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { cancelSearch, startSearch, useSearch } from '../../work/searches.ts'
import { textOfFound } from './textOfFound.ts'
import type { Side } from './useBreath.ts'

/** The stinger alone: what other bores would do to pull, temperature and the piston. */
export function StingerSearch({ side, searchKey }: { side: Side; searchKey: string }) {
  const search = useSearch('stinger-search', searchKey)
  const { text, engine } = side.order
  return (
    <section className="block search">
      <p>
        The cheapest change of all: one short tube. Smaller holds more pressure in the pipe and pulls harder
        until the piston overheats; larger runs cooler and weaker.
      </p>
      <SearchState search={search} onCancel={() => cancelSearch('stinger-search', searchKey)}>
        {!search?.answer?.final && (
          <div className="row">
            <Button onPress={() => startSearch('stinger-search', searchKey, { text, engine })}>
              Look at other stingers
            </Button>
          </div>
        )}
      </SearchState>
      {search?.answer && <Found side={side} answer={search.answer} />}
    </section>
  )
}

function Found({ side, answer }: { side: Side; answer: StingerSearchAnswer }) {
  const units = useApp((s) => s.units)
  const readOnly = useApp((s) => s.role === 'follower')
  const look = lookOf(units, 180)
  const { best, now, rows } = answer
  const noJet = !Number.isFinite(now.pull)
  const draw = useCallback(
    (w: number) => stingerFigure({ ...answer, noJet }, lookOf(units, w)),
    [answer, noJet, units],
  )
  const at = `engines.${side.view.index}.exhaust.stinger`
  const tryBest = () =>
    app.tryAll(
      textOfFound(
        [
          [`${at}.bore`, best.bore],
          [`${at}.length`, best.length],
        ],
        units,
      ),
      'try the stinger found',
    )
  const mm = (v: number) => plain(inLook(v, 'length', look), look.length === 'mm' ? 1 : 2)
  return (
    <>
      <Figure
        draw={draw}
        caption={`Circles good, triangles watch, crosses stop: the risk to the piston. ${answer.final ? '' : 'A first answer on coarse cells.'}`}
        name="stinger"
      />
      <div className="row">
        <Button isDisabled={readOnly} onPress={tryBest}>
          Try {mm(best.bore)} {look.length}
        </Button>
        <StandingMark standing={best.risk} />
        <span className="quiet">{best.because}</span>
      </div>
      <FindingsList findings={answer.findings} title="What the stinger search found" />
      <NumbersTable
        caption="Stingers"
        columns={[
          { head: 'Bore', unit: look.length },
          { head: 'Length', unit: look.length },
          { head: 'Pull', unit: look.force },
          { head: 'Torque', unit: look.torque },
          { head: 'Exhaust', unit: look.temperature },
          { head: 'In the belly', unit: look.pressure },
          { head: 'Risk' },
          { head: 'Cells' },
        ]}
        rows={[...rows, ...answer.lengths].map((r) => [
          mm(r.bore),
          mm(r.length),
          plain(inLook(r.pull, 'force', look), 0),
          plain(inLook(r.torque, 'torque', look), 2),
          plain(inLook(r.exhaustT, 'temperature', look), 0),
          plain(inLook(r.inside, 'pressure', look), 1),
          r.risk,
          r.cells,
        ])}
      />
    </>
  )
}
