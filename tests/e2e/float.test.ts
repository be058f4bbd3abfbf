import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { wakewright } from './commandLine.ts'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { expectNoSideScroll, fileText, goTo, kept, looked, openExampleOn, openMore } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const answer = () => page.locator('.answer h1')
const rider = () => page.getByRole('slider', { name: 'Rider on the deck, moved with the arrow keys' })
const live = (name: string) => page.locator('.live div', { hasText: name }).locator('dd')
const strip = () => page.getByRole('region', { name: 'What is being tried' })

async function openFloat(name: 'Heron' | 'Teal' | 'Dabchick', whole = true): Promise<void> {
  await openExampleOn(page, name, 'float')
  await answer().waitFor()
  if (whole) await openMore(page, 'loads')
  await looked(page)
}

test('the answer says draft, trim and balance; every load has its row and the swamped ones too', async () => {
  await openFloat('Heron')
  await expect
    .poll(() => answer().textContent())
    .toMatch(
      /With its rider kneeling it floats .*, [\d.]+ cm deep at the stern, the deck edge [\d.]+ cm above water/,
    )
  const rows = await page
    .getByRole('region', { name: 'Loads in numbers' })
    .locator('tbody th')
    .allTextContents()
  for (const load of ['nobody', 'prone', 'kneeling', 'standing', 'swamped, nobody', 'swamped, rider aboard'])
    expect(rows).toContain(load)
  for (const title of ['Does it come back?', 'With water in it', 'Minutes to flood', 'The hull from a file'])
    await expect.poll(() => page.getByRole('heading', { name: title }).count()).toBe(1)
  await openMore(page, 'stability', 'openings', 'foam', 'leak', 'hull', 'space')
  await expect.poll(() => page.locator('.question .figure svg').count()).toBe(7)
})

test('arrow keys move the rider, the craft answers at once, the place is tried and dropped without a trace', async () => {
  await openFloat('Heron')
  const [heel, trim] = [await live('Heel').textContent(), await live('Trim').textContent()]
  await rider().focus()
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('ArrowUp')
  await expect.poll(() => live('Heel').textContent()).toContain('to port')
  await expect.poll(() => live('Heel').textContent()).not.toBe(heel)
  await page.keyboard.press('Shift+ArrowLeft')
  await expect
    .poll(() => rider().getAttribute('aria-valuetext'))
    .toMatch(/0\.85 m forward of the transom, 4 cm to port/)
  await expect.poll(() => live('Trim').textContent()).not.toBe(trim)
  await strip().waitFor()
  await expect.poll(() => strip().textContent()).toMatch(/Rider off centre 0\.04 m, was 0 m/)
  await page.locator('.answer .saystried').waitFor()
  // what is now lies dashed under what is tried, on one water
  const says = (name: string) => page.locator('.question svg desc', { hasText: name }).first().textContent()
  await expect.poll(() => says('From the side')).toMatch(/tried .*now .*\(dashed\)/)
  await expect.poll(() => says('From astern')).toMatch(/tried .*down to port, now upright \(dashed\)/)
  await openMore(page, 'stability')
  await page.locator('.question svg desc', { hasText: /^Tried: .*Now: / }).waitFor({ state: 'attached' })
  await page.locator('.deckplan desc', { hasText: /tried .*now .*\(dashed\)/ }).waitFor({ state: 'attached' })
  await strip().getByRole('button', { name: 'Drop', exact: true }).click()
  await expect.poll(() => live('Heel').textContent()).toBe(heel)
  await expect.poll(() => strip().count()).toBe(0)
})

test('dragging the rider over the deck answers every frame and never blocks for long', async () => {
  await openFloat('Heron')
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable', { timeDomain: 'threadTicks' })
  const scriptSeconds = async () =>
    (await session.send('Performance.getMetrics')).metrics.find((m) => m.name === 'ScriptDuration')!.value
  await rider().scrollIntoViewIfNeeded()
  const before = await scriptSeconds()
  const at = (await rider().boundingBox())!
  await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2)
  await page.mouse.down()
  for (let i = 1; i <= 30; i++)
    await page.mouse.move(at.x + at.width / 2 + 4 * i, at.y + at.height / 2 + (i % 5))
  const spent = (await scriptSeconds()) - before
  const answered = await page.evaluate(() => performance.getEntriesByName('rider answered').length)
  expect(answered).toBeGreaterThan(5)
  // all the script that ran for a frame, within a frame's time: processor time, as the machine may be busy with other work
  console.log(
    `rider dragged: ${answered} frames, ${((1000 * spent) / answered).toFixed(1)} ms of script each`,
  )
  expect(spent / answered).toBeLessThan(0.017)
  await expect.poll(() => live('Trim').textContent()).toMatch(/bow down/)
  // held still, views, numbers and mark say the same: what followed past React is where React then has it
  await expect
    .poll(async () => {
      const deep = Number.parseFloat((await live('Deep at the stern').textContent()) ?? '') / 10
      const letters = await page.locator('.sideview svg text').allTextContents()
      return letters.some((t) => /^[\d.]+ cm$/.test(t) && Math.abs(Number.parseFloat(t) - deep) < 0.06)
    })
    .toBe(true)
  await expect
    .poll(async () => {
      const mark = (await rider().boundingBox())!
      return Math.abs(mark.x + mark.width / 2 - (at.x + at.width / 2 + 120))
    })
    .toBeLessThan(2)
  // and nothing of the views or their captions is cut off below
  const cutOff = await page.locator('.views').evaluate((v) => v.scrollHeight - v.clientHeight)
  expect(cutOff).toBeLessThanOrEqual(1)
  await page.mouse.up()
  await strip().waitFor()
})

test('a reload in the middle of a drag leaves no trace; a finished one is tried over a reload and undone', async () => {
  await openFloat('Heron')
  const there = await rider().getAttribute('aria-valuetext')
  await rider().scrollIntoViewIfNeeded()
  const grab = async () => {
    const at = (await rider().boundingBox())!
    await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2)
    await page.mouse.down()
    for (let i = 1; i <= 6; i++) await page.mouse.move(at.x + at.width / 2 + 8 * i, at.y + at.height / 2)
    await expect.poll(() => rider().getAttribute('aria-valuetext')).not.toBe(there)
  }
  await grab()
  await page.reload()
  await page.mouse.up()
  await openMore(page, 'loads')
  await looked(page)
  await expect.poll(() => rider().getAttribute('aria-valuetext')).toBe(there)
  await expect.poll(() => strip().count()).toBe(0)
  await rider().scrollIntoViewIfNeeded()
  await grab()
  await page.mouse.up()
  await strip().waitFor()
  await kept(page)
  await page.reload()
  await strip().waitFor()
  await page.keyboard.press('Control+z')
  await expect.poll(() => strip().count()).toBe(0)
  await expect.poll(() => rider().getAttribute('aria-valuetext')).toBe(there)
})

test('two scale readings give weight and centre, and trying them makes the list agree', async () => {
  await openFloat('Heron')
  await openMore(page, 'weights')
  await page.locator('.weighing summary', { hasText: 'true centre of gravity' }).click()
  const fill = async (label: string, text: string) => {
    const field = page.locator('.weighing').getByLabel(label, { exact: true })
    await field.fill(text)
    await field.press('Enter')
  }
  await fill('After hook, forward of the transom', '0.2 m')
  await fill('Scale reads there', '40 kg')
  await fill('Fore hook, forward of the transom', '2.0 m')
  await fill('Scale reads there, fore', '30 kg')
  // 30 of 70 kg at 2.0 m, the rest at 0.2 m
  await expect
    .poll(() => page.locator('.weighing [role="status"]').textContent())
    .toMatch(/weighs 70\.0 kg ± 0\.3 kg; its centre is 0\.971 m/)
  await page.locator('.weighing').getByRole('button', { name: 'Try this' }).click()
  const rows = page.getByRole('region', { name: 'Weights' }).locator('tbody tr')
  // the craft was weighed with its tank empty: what is in the tank comes on top
  const liquid = Number(
    await rows.filter({ hasText: 'liquid in fuel tank' }).first().locator('td').first().textContent(),
  )
  expect(liquid).toBeGreaterThan(0)
  await expect
    .poll(() => rows.last().textContent())
    .toContain(`all but the rider, tried${(70 + liquid).toFixed(1)}`)
  await strip().getByRole('button', { name: 'Keep', exact: true }).click()
  await kept(page)
  await goTo(page, 'craft')
  await expect.poll(() => fileText(page)).toContain('log:')
  // taken back, the list is as it was
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => page.getByLabel('Text of the craft file').inputValue()).not.toContain('log:')
})

/** a closed box as an STL text; `open` leaves a face out, `inward` turns all of them */
function boxStl(l: number, b: number, d: number, flaw?: 'open' | 'inward'): string {
  const p = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [i & 1 ? l : 0, i & 2 ? b / 2 : -b / 2, i & 4 ? d : 0])
  const faces = [
    ...[
      [0, 2, 3],
      [0, 3, 1],
      [4, 5, 7],
      [4, 7, 6],
      [0, 1, 5],
      [0, 5, 4],
    ],
    ...[
      [2, 6, 7],
      [2, 7, 3],
      [0, 4, 6],
      [0, 6, 2],
      [1, 3, 7],
      [1, 7, 5],
    ],
  ]
  const drawn = flaw === 'open' ? faces.slice(0, -1) : faces
  const lines = drawn.map(
    (f) =>
      `facet normal 0 0 0\nouter loop\n${(flaw === 'inward' ? f.toReversed() : f).map((i) => `vertex ${p[i]!.join(' ')}`).join('\n')}\nendloop\nendfacet`,
  )
  return `solid box\n${lines.join('\n')}\nendsolid box\n`
}

const pick = () => page.getByLabel('Open a hull file')
const stl = (text: string) => ({ name: 'box.stl', mimeType: 'model/stl', buffer: Buffer.from(text) })
const refusal = () => page.locator('.hullfile [role="alert"]')

test('a hull file is tried as the hull, kept by name, and found again after a reload; a leaky one is refused with the place', async () => {
  await openFloat('Heron')
  await openMore(page, 'hull')
  await pick().setInputFiles(stl(boxStl(2400, 800, 240, 'open')))
  await expect.poll(() => refusal().textContent()).toMatch(/Not taken: box\.stl .*It leaks: \d+ edges/)
  await expect.poll(() => strip().count()).toBe(0)
  await pick().setInputFiles(stl(boxStl(2400, 800, 240)))
  await page.locator('.hullfile [role="status"]').waitFor()
  await expect.poll(() => page.locator('.hullfile').textContent()).toMatch(/taken as mm, a hull 2\.40 m long/)
  await expect.poll(() => strip().textContent()).toMatch(/box\.stl/)
  // 143 kg on 2.4 by 0.8 m of water: 7.4 cm if it lay level
  await expect.poll(() => page.locator('.answer .saystried').textContent()).toMatch(/cm deep at the stern/)
  await strip().getByRole('button', { name: 'Keep', exact: true }).click()
  await kept(page)
  await page.reload()
  await answer().waitFor()
  await openMore(page, 'hull')
  await page.getByText('which this browser has').waitFor()
  // the sketch of the craft, and so every look at it, rests on the same mesh: 142 kg at 0.96 m on this box sink it 7.4 cm and trim
  // it 2.1° by the stern (0.24 m off the middle, over L²/12T), 118 to 120 mm at the transom; the sled it was draws 121
  await goTo(page, 'craft')
  const sketch = page.locator('svg desc', { hasText: 'from the side, from above and from astern' }).first()
  await expect
    .poll(async () => Number(/drawing (\d+) mm/.exec((await sketch.textContent()) ?? '')?.[1]))
    .toBe(119)
})

test('what is guessed of a hull file, or wrong with it, is told alike on the page, in its findings and on the command line', async () => {
  await openFloat('Heron')
  await openMore(page, 'hull')
  const inches = boxStl(94.488, 31.496, 9.449)
  await pick().setInputFiles(stl(inches))
  await strip().getByRole('button', { name: 'Keep', exact: true }).click()
  await kept(page)
  await goTo(page, 'craft')
  const text = await fileText(page)
  expect(text).toMatch(/mesh: box\.stl/)
  await goTo(page, 'float')
  await openMore(page, 'hull', 'findings')
  const folder = mkdtempSync(join(tmpdir(), 'hull-'))
  try {
    writeFileSync(join(folder, 'craft.yaml'), text)
    for (const [file, expected] of [
      [inches, /was taken as in, a hull 2\.40 m long/],
      [
        boxStl(94.488, 31.496, 9.449, 'open'),
        /It leaks: 3 edges have a face on one side only, the first \d+ cm/,
      ],
      [boxStl(94.488, 31.496, 9.449, 'inward'), /It is inside out/],
    ] as const) {
      writeFileSync(join(folder, 'box.stl'), file)
      const { out } = await wakewright(['look', 'craft.yaml', '--json'], { cwd: folder })
      const looked = JSON.parse(out) as { findings: { question: string; says: string }[] }
      const told = looked.findings.filter((f) => f.question === 'float' && /box\.stl/.test(f.says))
      expect(told.map((f) => f.says).join(' ')).toMatch(expected)
      await pick().setInputFiles(stl(file))
      for (const { says } of told) {
        await page.locator('.findings').getByText(says).waitFor()
        // beside the file itself, in the same words
        const fault = /^The hull file (box\.stl .*?) Everything here/.exec(says)?.[1]
        if (fault) await expect.poll(() => refusal().textContent()).toContain(fault)
        else await expect.poll(() => page.locator('.hullfile').textContent()).toContain(says)
      }
      if (file === inches) await expect.poll(() => refusal().count()).toBe(0)
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
})

test('the page is sound to axe, needs no side scroll on a phone, and says in words what it draws in space', async () => {
  await openFloat('Dabchick')
  await openMore(page, 'space')
  expect(await axeFinds(page)).toEqual([])
  const space = page.locator('.threed canvas').or(page.getByText('This browser draws no picture in space'))
  await space.waitFor()
  if ((await page.locator('.threed canvas').count()) > 0)
    await expect
      .poll(() => page.locator('.threed canvas').getAttribute('aria-label'))
      .toMatch(/cm deep at the stern/)
  await page.setViewportSize({ width: 390, height: 844 })
  await expectNoSideScroll(page)
  // the words across the top stand whole in one row that scrolls, the one that is open in sight
  for (const width of [390, 360]) {
    await page.setViewportSize({ width, height: 780 })
    await expectNoSideScroll(page)
    const tops = await page
      .locator('.words a')
      .evaluateAll((links) => links.map((link) => link.getBoundingClientRect().top))
    expect(new Set(tops).size).toBe(1)
    const open = await page.locator('.words a[aria-current="page"]').boundingBox()
    expect(open!.x).toBeGreaterThanOrEqual(0)
    expect(open!.x + open!.width).toBeLessThanOrEqual(width)
  }
})
