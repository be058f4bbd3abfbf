import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import { openExampleOn } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

/** What the browser's store has of the craft: the newest text, and when it was written. */
const kept = () =>
  page.evaluate(async () => {
    const names = (await indexedDB.databases()).map((d) => d.name!)
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const open = indexedDB.open(names[0]!)
      open.onsuccess = () => resolve(open.result)
      open.onerror = () => reject(open.error)
    })
    const all = await new Promise<{ time: number; work: { text: string } }[]>((resolve, reject) => {
      const get = db.transaction('snapshots').objectStore('snapshots').getAll()
      get.onsuccess = () => resolve(get.result)
      get.onerror = () => reject(get.error)
    })
    db.close()
    return all.reduce((a, b) => (b.time > a.time ? b : a)).work.text
  })

test('typing on without a pause is kept while it goes on, in the text and in a field of the form', async () => {
  await openExampleOn(page, 'Heron', 'craft')
  await page.getByRole('button', { name: 'As text' }).click()
  const area = page.locator('textarea').first()
  await area.focus()
  await page.keyboard.press('Control+Home')
  // a hundred letters with no pause as long as any wait of the page; how much is kept is asked while it goes on
  const seen: number[] = []
  for (let i = 0; i < 100; i++) {
    await page.keyboard.type(i === 0 ? '#' : 'x')
    if (i % 10 === 9) seen.push((/^#x*/.exec(await kept())?.[0] ?? '').length)
  }
  // it is not the last pause that keeps it: what was typed before is there at each look
  expect(seen[9]).toBeGreaterThan(50)
  for (const [k, n] of seen.entries()) if (k > 0) expect(n).toBeGreaterThan(seen[k - 1]!)
  await expect.poll(async () => /^#x*/.exec(await kept())?.[0].length).toBe(100)
  await page.getByRole('button', { name: 'As a form' }).click()
  const about = page.getByLabel('About', { exact: true }).first()
  await about.focus()
  await page.keyboard.press('End')
  for (let i = 0; i < 40; i++) await page.keyboard.type('y')
  await expect.poll(kept).toMatch(/y{40}/)
})
