import { readFileSync } from 'node:fs'
import { readForPlace } from '@/link/reader-place.ts'
import { write } from '@/link/write.ts'
import { needleIndex } from '@/mechanism/bed.ts'
import { outlineOf } from '@/site/chapter-outline.ts'
import { library } from './model.ts'
import { addressWritten, drawn, expect, type Page, test as freshTest, lastingTest as test } from './page.ts'

const place = { columnOne: needleIndex('R5')! }
const { steps } = outlineOf(
  readFileSync(new URL('../../content/chapters/05-rockers-and-strips.mdx', import.meta.url), 'utf8'),
)

/** A step's state on a bed with column 1 at R5, as a link's text. */
const stateAt = (n: number): string => write(readForPlace(steps[n]!.state, library, place), library)

const fragment = async (page: Page): Promise<string> => {
  await addressWritten(page)
  return new URL(page.url()).hash.slice(1)
}

const open = async (page: Page, address: string): Promise<void> => {
  await page.goto(`./${address}`)
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await drawn(page)
}

test('a chapter keeps the needle of column 1 that its reader has set, step by step and into the next', async ({
  page,
}) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page, 'chapters/rockers-and-strips/#first=R5')
  await expect.poll(() => fragment(page)).toBe(stateAt(0))
  const said = page.locator('.own-place')
  await expect(said).toContainText(
    'Column 1 is at R5 on this machine: what the text says of R1 is seen at R5, and so on along the bed.',
  )
  for (const n of [1, 2]) {
    await page.keyboard.press('Alt+PageDown')
    await expect.poll(() => fragment(page)).toBe(stateAt(n))
  }
  // The text's own example of another bed is shown as it is, and does not stay.
  await page.locator('[data-go*="first=R13"]').click()
  await expect.poll(() => fragment(page)).toContain('first=R13')
  await page.keyboard.press('Alt+PageDown')
  await expect.poll(() => fragment(page)).toBe(stateAt(3))
  const next = page.locator('.chapter-ends [rel="next"]')
  await expect(next).toHaveAttribute('href', /#first=R5$/)
  await said.getByRole('button', { name: 'Put column 1 at R1' }).click()
  await expect(said).toBeHidden()
  await expect.poll(() => fragment(page)).not.toContain('first')
  await expect(next).not.toHaveAttribute('href', /first/)
})

test('a prediction shows its answer on the reader’s own bed', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  const asked = steps.findIndex(({ predictions }) => predictions.length > 0)
  await open(page, `chapters/rockers-and-strips/?step=${steps[asked]!.id}#first=R5`)
  const form = page.locator(`#${steps[asked]!.id} .predict`)
  const right = Number(await form.getAttribute('data-right'))
  await form.locator('label').nth(right).click()
  await expect(form.locator('.predict-said')).toContainText('Yes.')
  const text = steps[asked]!.predictions[0]!.attributes.get('state')!
  await expect.poll(() => fragment(page)).toBe(write(readForPlace(text, library, place), library))
})

freshTest(
  'a class keeps the needle of column 1, in its questions and in a window that joins it',
  async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await open(page, 'class/rockers-and-strips/?class=ownp#first=R5')
    await expect(page.locator('.own-place')).toContainText('Column 1 is at R5')
    await expect.poll(() => fragment(page)).toBe(stateAt(0))
    await page.keyboard.press('End')
    await expect.poll(() => fragment(page)).toBe(stateAt(steps.length - 1))
    const speaker = await page.context().newPage()
    await speaker.goto('./class/rockers-and-strips/speaker/?class=ownp')
    await expect(speaker.locator('.speaker-heard')).toHaveText('In step with the class.')
    await expect.poll(() => fragment(speaker)).toContain('first=R5')
    await page.goto(`${page.url().replace(/[?#].*$/, '')}?class=ownq&quiz=1.1#first=R5`)
    await expect(page.locator('.class-question')).toBeVisible()
    await expect.poll(() => fragment(page)).toContain('first=R5')
    await speaker.close()
  },
)
