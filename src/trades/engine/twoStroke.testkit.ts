import { heron, withoutSection } from '../../craft/craft.testkit.ts'
import { readCraft } from '../../craft/index.ts'

/** A sport engine with a pipe and a muffler, made up for these tests, as craft-file text. */
export const sportEngine = `engines:
  - name: engine
    kind: two-stroke
    tune: sport
    bore: 50.0 mm (measured)
    stroke: 50.6 mm (measured)
    ports:
      exhaust: { opens: 94 deg (measured) }
      transfers: { opens: 118 deg (measured), windows: 4, scavenging: good loop }
    inlet: { kind: reed }
    redline: 11000 rpm
    exhaust:
      pipe:
        - { length: 90 mm, from: 33 mm, to: 35 mm }
        - { length: 250 mm, from: 35 mm, to: 52 mm, bend: 60 deg }
        - { length: 160 mm, from: 52 mm, to: 82 mm }
        - { length: 100 mm, from: 82 mm, to: 82 mm }
        - { length: 220 mm, from: 82 mm, to: 20 mm }
      stinger: { length: 200 mm, bore: 20 mm }
      muffler: { length: 200 mm, width: 100 mm }
      outlet: { length: 80 mm, bore: 24 mm, height: 150 mm }
`

/** The demo craft with its engines section replaced, and without its fuel. */
export function craftTextWith(engines: string): string {
  // its fuel lines end at the engine that is taken out here
  const text = withoutSection(heron, 'fuel')
  const from = text.indexOf('engines:')
  const to = text.indexOf('\ndrive:')
  return text.slice(0, from) + engines + text.slice(to)
}

export function craftWith(engines: string) {
  const { craft, problems } = readCraft(craftTextWith(engines))
  if (!craft) throw new Error(problems.map((p) => p.says).join('; '))
  return craft
}
