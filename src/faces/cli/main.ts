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
  .description('parts to cut, with hours and mass; with --to their patterns at 1:1 as PDF, SVG and DXF')
  .argument('<craft>', 'craft file (YAML)')
  .argument('[parts...]', 'ids of parts; all when left out')
  .option('--to <folder>', 'write patterns into this folder, and one ZIP of all')
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
  .command('serve')
  .description('serve the app on this machine only (127.0.0.1)')
  .option('--port <number>', 'port; 0 takes a free one', '0')
  .option('--show <craft>', 'print the findings of a craft file first')
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
