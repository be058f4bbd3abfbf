/**
 * Speed of the duct kernel: the full step (area change, friction, wall heat, tracer) of eight ducts of 12 to
 * 120 cells, beside the same scheme in plain C (bench/duct.c, built here with gcc -O3 -march=native when gcc
 * is on the PATH). Ratios, because machines differ; processor time, because others may be using it. Run: npx tsx bench/ductBench.ts [--json]
 */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { at, createDucts, type DuctShape, type Ducts, field, setCell } from '../src/physics/gas/arena.ts'
import { predictEnds, refreshWallRates, sweep } from '../src/physics/gas/duct.ts'

const lengths = [12, 27, 43, 58, 74, 89, 105, 120]
const cells = lengths.reduce((a, b) => a + b)
const steps = 1500
const rounds = 31

function shape(n: number): DuctShape {
  const faceArea = Array.from({ length: n + 1 }, (_, c) => 0.7853981633974483 * (0.035 + 0.05 * (c / n)) ** 2)
  const cellArea = Array.from(
    { length: n },
    (_, c) => (faceArea[c]! + faceArea[c + 1]! + Math.sqrt(faceArea[c]! * faceArea[c + 1]!)) / 3,
  )
  return { dx: 0.01, faceArea, cellArea }
}

function start(g: Ducts): void {
  for (let d = 0; d < g.count; d++) {
    const n = lengths[d]!
    for (let c = 0; c < n; c++) {
      const s = (c + 0.5) / n
      const p = 101325 * (1 + 0.8 * Math.exp(-50 * (s - 0.3) * (s - 0.3)))
      g.cell[at(g.first[d]! + c) + field.WALL] = 600
      setCell(g, g.first[d]! + c, p / (g.gasConstant * (900 - 300 * s)), 0, p, s)
    }
  }
}

function closeEnds(g: Ducts): void {
  for (let e = 0; e < 8 * g.count; e += 4) {
    g.edge[e] = 0
    g.edge[e + 1] = g.end[e + 2]!
    g.edge[e + 2] = 0
    g.edge[e + 3] = 0
  }
}

function run(g: Ducts): { seconds: number; sum: number } {
  start(g)
  const t0 = process.cpuUsage()
  for (let s = 0; s < steps; s++) {
    if (s % 4 === 0) refreshWallRates(g, 4 * 8e-6)
    predictEnds(g, 8e-6)
    closeEnds(g)
    sweep(g, 8e-6)
  }
  const { user, system } = process.cpuUsage(t0)
  const seconds = (user + system) / 1e6
  let sum = 0
  for (let d = 0; d < g.count; d++)
    for (let i = g.first[d]!; i <= g.last[d]!; i++)
      sum += g.cell[at(i) + field.P]! * ((i % 7) + 1) + 1e4 * g.cell[at(i) + field.U]!
  return { seconds, sum }
}

/** The C twin, built into `dir`; undefined where there is no compiler. */
function buildC(dir: string): string | undefined {
  const program = join(dir, 'duct')
  const source = join(import.meta.dirname, 'duct.c')
  try {
    execFileSync('gcc', ['-O3', '-march=native', '-o', program, source, '-lm'], { stdio: 'pipe' })
    return program
  } catch {
    return undefined
  }
}

/**
 * Millions of cell-updates a second (best round), the ratio to plain C (middle of the rounds' ratios, each pair run back
 * to back so that a busy machine troubles both alike), and how far the two end states differ.
 */
export function benchDuct(): { mups: number; ofC?: number; agreement?: number } {
  const g = createDucts(lengths.map(shape))
  const dir = mkdtempSync(join(tmpdir(), 'duct-'))
  try {
    const program = buildC(dir)
    let best = Infinity
    let agreement = 0
    const ratios: number[] = []
    run(g)
    for (let k = 0; k < rounds; k++) {
      const r = run(g)
      best = Math.min(best, r.seconds)
      if (!program) continue
      const [seconds, sum] = execFileSync(program, [String(steps)])
        .toString()
        .split(' ')
        .map(Number)
      ratios.push(seconds! / r.seconds)
      agreement = Math.abs(r.sum / sum! - 1)
    }
    const mups = (cells * steps) / best / 1e6
    if (!program) return { mups }
    return { mups, ofC: ratios.sort((a, b) => a - b)[ratios.length >> 1]!, agreement }
  } finally {
    rmSync(dir, { recursive: true, force: true })
  }
}

if (process.argv[1] && import.meta.filename === process.argv[1]) {
  const r = benchDuct()
  if (process.argv.includes('--json')) console.log(JSON.stringify(r))
  else {
    console.log(`duct kernel: ${r.mups.toFixed(1)} million cell-updates a second (wanted: 20 or more)`)
    console.log(
      r.ofC === undefined
        ? 'no gcc here: not compared with C'
        : `against plain C: ${r.ofC.toFixed(2)} of its speed (wanted: 0.80 or more); states agree to ${r.agreement!.toExponential(1)}`,
    )
  }
}
