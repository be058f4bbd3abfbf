import { setFlagsFromString } from 'node:v8'
import { Command, CommanderError } from 'commander'
import { version } from '../../../package.json'
import { BadInput, exit } from './outcome.ts'

const program = new Command('wakewright')
  .description('Decide, make, check, run and understand a small home-built powered craft.')
  .version(version)
  .exitOverride()
  .showHelpAfterError('(add --help for the whole list)')
  .configureOutput({ writeErr: (text) => process.stderr.write(text) })
  .addHelpText('after', '\nExit codes: 0 fine, 1 a finding says stop, 2 bad input, 3 internal.')

let code: number = exit.fine

/**
 * For a command that is done in a second or two: most of its code runs too few times to pay for being compiled with care, which
 * would take the cores from the work itself. Holds for the threads it starts, too.
 */
function soonDone(): void {
  setFlagsFromString('--sparkplug')
  setFlagsFromString('--interrupt-budget=300000')
}

// a reader that has seen enough closes the pipe (`look … | head`): stop quietly, with what is known so far
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
  process.exit(code)
})

program
  .command('look')
  .description('what the craft will do and what to do about it, on one screen')
  .argument('<craft>', 'craft file (YAML)')
  .option('--json', 'decisions, findings and balance as JSON, SI units')
  .option('--all', 'every finding with what drives it, and the operating table')
  .option('--draw', 'draw the craft and its curves too, with letters')
  .option('--question <word>', 'only one of craft, push, breath, float, strength, fuel, make, runs')
  .option('--fine', 'simulate engines finely, where no fine curve is kept yet; takes some seconds')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    if (!options.fine) soonDone()
    code = await (await import('./lookCommand.ts')).look(file, options)
  })

program
  .command('try')
  .description('what look would say with other values; nothing is written')
  .argument('<craft>', 'craft file (YAML)')
  .argument('<values...>', 'path=value as one would type it in the file, such as jet.rotor.pitch="95 mm"')
  .option('--json', 'decisions, findings and balance as JSON, SI units')
  .option('--all', 'every finding with what drives it, and the operating table')
  .option('--question <word>', 'only one of craft, push, breath, float, strength, fuel, make, runs')
  .option('--fine', 'simulate engines finely, where no fine curve is kept yet; takes some seconds')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, values: string[], options) => {
    code = await (await import('./lookCommand.ts')).tryCommand(file, values, options)
  })

program
  .command('choose')
  .description('the impeller and nozzle that do best, and what each change would buy; takes some seconds')
  .argument('<craft>', 'craft file (YAML)')
  .option('--json', 'everything that was compared as JSON, SI units')
  .option('--draw', 'draw pull against speed, and both over the pitch, with letters')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    code = await (await import('./chooseCommand.ts')).choose(file, options)
  })

program
  .command('make')
  .description(
    'parts to cut and to print, with hours and mass; with --to their patterns at 1:1 (PDF, SVG, DXF), STL and 3MF',
  )
  .argument('<craft>', 'craft file (YAML)')
  .argument('[parts...]', 'ids of parts; all when left out')
  .option('--to <folder>', 'write the files into this folder, and one ZIP of all')
  .option('--paper <name>', 'A4 or Letter', 'A4')
  .option('--square <mm>', 'what the square of 100 mm measured on a print, across and up, such as 97x97.2')
  .option('--json', 'parts with hours, mass, steps and findings as JSON, SI units')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, parts: string[], options) => {
    code = await (await import('./makeCommand.ts')).make(file, parts, options)
  })

program
  .command('measure')
  .description('which values that are not measured would change a decision; takes about a minute')
  .argument('<craft>', 'craft file (YAML)')
  .option('--json', 'the values, their ends and what turns there as JSON, SI units')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    code = await (await import('./measureCommand.ts')).measure(file, options)
  })

program
  .command('breathe')
  .description('how the engines breathe; with --search a better pipe or stinger')
  .argument('<craft>', 'craft file (YAML)')
  .option('--search <part>', 'pipe or stinger; takes one to three minutes')
  .option('--engine <number>', 'which engine of the file, counted from 1', '1')
  .option('--rpm <number>', 'speed the pipe shall suit; the jet’s load decides when left out')
  .option('--json', 'findings, curves and answer as JSON, SI units')
  .action(async (file: string, options) => {
    code = await (await import('./breatheCommand.ts')).breathe(file, options)
  })

program
  .command('hear')
  .description('what the engines did in a recording: speeds, starts, stops, racing, misfires')
  .argument('<recording>', 'WAV; with ffmpeg on the path also MP3, M4A, Ogg, FLAC and phone videos')
  .option('--json', 'tracks, events and findings as JSON')
  .option('--units <system>', 'metric or inch', 'metric')
  .option('--craft <file>', 'craft file: its engines, their redline and impeller guide the listening')
  .option('--engines <count>', '1, 2 or auto')
  .option('--cylinders <count>', 'cylinders of each engine, when there is no craft file')
  .option('--tied-up', 'the craft was tied to a post: lay it beside the predicted speed (needs --craft)')
  .option(
    '--gpx <file>',
    'GPX track of the craft under way: lay it beside the speed predicted at each moment',
  )
  .option('--lag <seconds>', 'the track begins so much after the recording, instead of being matched')
  .option('--phone <place>', 'where the phone that recorded was: shore or craft', 'shore')
  .option('--pull <list>', 'luggage-scale readings of the pull in kg, such as "21.4, 22.0, 21.7"')
  .action(async (recording: string, options) => {
    code = await (await import('./hearCommand.ts')).hearCommand(recording, options)
  })

program
  .command('ask')
  .description('what went wrong in a run: causes with their odds, what stays open, the cheapest next check')
  .argument('<craft>', 'craft file (YAML)')
  .argument('[run]', 'recording, as for hear; left out: only what is said counts')
  .option('--said <seen...>', 'what was seen or tried, such as choke=helped; @e2 behind it for one episode')
  .option('--found <checks...>', 'what a check found, such as bolts="bolts out"')
  .option('--weigh <causes...>', 'another weight beforehand of a cause, such as weed=20')
  .option('--tied-up', 'the craft was tied to a post')
  .option('--gpx <file>', 'GPX track of the craft under way')
  .option('--lag <seconds>', 'the track begins so much after the recording, instead of being matched')
  .option('--phone <place>', 'where the phone that recorded was: shore or craft', 'shore')
  .option('--pull <list>', 'luggage-scale readings of the pull in kg, such as "21.4, 22.0, 21.7"')
  .option('--sheet <file>', 'one page to ask a stranger with, the causes on it: .pdf, .svg or .txt')
  .option('--json', 'episodes, causes, checks and what stays open as JSON')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, run: string | undefined, options) => {
    code = await (await import('./askCommand.ts')).ask(file, run, options)
  })

program
  .command('reckon')
  .description('answer one handbook question: reckon ID name=value…')
  .argument('[id]', 'reckoner; see --list')
  .argument('[inputs...]', 'name=value with its unit, such as bore="120 mm"; a bare number is SI')
  .option('--list', 'list every reckoner, or with an id the inputs and outputs of one')
  .option('--json', 'answer as JSON, SI units')
  .action(async (id: string | undefined, inputs: string[], options) => {
    code = await (await import('./reckonCommand.ts')).reckon(id, inputs, options)
  })

program
  .command('plan')
  .description(
    'the next run: what to run, where the phone stands, what to read, and what each step should sound like',
  )
  .argument('<craft>', 'craft file (YAML)')
  .option('--to <file>', 'a run card to print (.pdf) or as text (.txt)')
  .option('--json', 'the plan as JSON, SI units')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    code = await (await import('./planCommand.ts')).plan(file, options)
  })

program
  .command('calibrate')
  .description('fit the models to the runs of the log: what moved, how far, and what is left of the doubt')
  .argument('<craft>', 'craft file (YAML)')
  .option('--runs <list>', 'numbers of log show, such as 3,5; the runs since the last change when left out')
  .option('--keep', 'write the fit into the craft file, so that all is reckoned with it')
  .option('--forget', 'take a kept fit out again')
  .option('--json', 'the fit as JSON, SI units')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    code = (await import('./calibrateCommand.ts')).calibrateCommand(file, options)
  })

program
  .command('sheet')
  .description(
    'one page to ask a stranger with: craft to scale, ten numbers, what happened, what was tried, one question',
  )
  .argument('<craft>', 'craft file (YAML)')
  .option('--to <file>', '.pdf, .svg or .txt; on the screen as text when left out')
  .option('--question <words>', 'your own question, one sentence')
  .option('--json', 'what stands on it, as JSON')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    code = await (await import('./sheetCommand.ts')).sheetCommand(file, options)
  })

program
  .command('book')
  .description(
    'the book to build from: decisions, drawings, lists, cards, boxes to write in, as one PDF or a folder',
  )
  .argument('<craft>', 'craft file (YAML)')
  .option('--to <file>', 'FILE.pdf, or a folder for a PDF a chapter, drawings as SVG and tables as CSV')
  .option('--paper <name>', 'A4 or Letter', 'A4')
  .option('--date <date>', 'year-month-day on the cover; today when left out')
  .option('--json', 'its chapters, pages and boxes, as JSON')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    const today = new Date().toISOString().slice(0, 10)
    code = await (await import('./bookCommand.ts')).bookCommand(file, options, today)
  })

const log = program
  .command('log')
  .description('what was run, checked, changed, made and bought, beside the craft file')

log
  .command('add')
  .description('write one thing down, behind all others; a value of the craft file is changed along with it')
  .argument('<craft>', 'craft file (YAML)')
  .argument('<kind>', 'run, check, change, made, bought or note')
  .argument('[words...]', 'what was done or found, in your own words')
  .option('--at <date>', 'year-month-day; today when left out')
  .option('--reading <name=value...>', 'a number of a run: pull, rpm, rpm A, rpm B, top speed, time, fuel')
  .option('--path <path>', 'change: value of the craft file, such as jet.rotor.pitch')
  .option('--from <value>', 'change: the value before')
  .option('--to <value>', 'change: the value since, written into the craft file')
  .option('--why <words>', 'why it was changed')
  .option('--expect <words>', 'what it should do')
  .option('--part <id>', 'made: which part')
  .option('--check <id>', 'check: which one')
  .option('--outcome <id>', 'check: what was found')
  .option('--run <file>', 'run: the recording or folder it is kept in')
  .option('--json', 'what was written, as JSON')
  .action(async (file: string, kind: string, words: string[], options) => {
    const today = new Date().toISOString().slice(0, 10)
    code = (await import('./logCommand.ts')).logAdd(file, kind, words, options, today)
  })

log
  .command('show')
  .description('the log, oldest first; with --season the runs with what changed between them')
  .argument('<craft>', 'craft file (YAML)')
  .option('--season [year]', 'pull, engine speed, top speed and running time over the versions of the craft')
  .option('--draw', 'draw the season too, with letters')
  .option('--json', 'entries or season as JSON, SI units')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, options) => {
    code = (await import('./logCommand.ts')).logShow(file, options)
  })

log
  .command('compare')
  .description('what changed between two runs, and what it did to pull, engine speed and top speed')
  .argument('<craft>', 'craft file (YAML)')
  .argument('<a>', 'a run: its number in log show, its date, first or last')
  .argument('<b>', 'the other run')
  .option('--json', 'the comparison as JSON, SI units')
  .option('--units <system>', 'metric or inch', 'metric')
  .action(async (file: string, a: string, b: string, options) => {
    code = (await import('./logCommand.ts')).logCompare(file, a, b, options)
  })

program
  .command('serve')
  .description('serve the app on this machine only (127.0.0.1), unless a phone is to have it too')
  .option('--port <number>', 'port; 0 takes a free one', '0')
  .option('--show <craft>', 'print the findings of a craft file first')
  .option('--phone [craft]', 'let one phone on the same network in as well, and hand it a craft file')
  .action(async (options) => {
    code = await (await import('./serveCommand.ts')).serveCommand(options)
  })

try {
  await program.parseAsync()
} catch (error) {
  if (error instanceof BadInput) {
    for (const line of error.lines) process.stderr.write(`${line}\n`)
    code = exit.badInput
  } else if (error instanceof CommanderError) {
    code = error.exitCode === 0 ? exit.fine : exit.badInput
  } else {
    const detail =
      error instanceof Error ? (process.env['WAKEWRIGHT_DEBUG'] ? error.stack : error.message) : String(error)
    process.stderr.write(`Something is wrong inside Wakewright, not with your input: ${detail}\n`)
    code = exit.internal
  }
}
process.exitCode = code
