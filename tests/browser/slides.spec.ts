import { readFileSync } from 'node:fs'
import { strFromU8, unzipSync } from 'fflate'
import { outlineOf } from '@/site/chapter-outline.ts'
import { expect, type Page, test } from './page.ts'

const chapter = new URL('../../content/chapters/07-the-cam-gate.mdx', import.meta.url)

const saved = async (page: Page): Promise<Record<string, Uint8Array>> => {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as slides' }).click()
  const file = await download
  expect(file.suggestedFilename()).toBe('two-gates-two-paths.zip')
  return unzipSync(readFileSync(await file.path()))
}

test('a chapter is saved as slides: a picture of each step in order, and a text with its notes', async ({
  page,
}) => {
  await page.goto('./chapters/the-cam-gate/')
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  await page.getByRole('button', { name: 'Save as slides' }).click()
  await page.getByRole('button', { name: 'Cancel' }).click()
  await expect(page.locator('.slides-said')).toHaveText('Cancelled: nothing is saved.')
  const files = await saved(page)
  const { steps } = outlineOf(readFileSync(chapter, 'utf8'))
  // Some steps look twice at the same.
  const sights = new Set(steps.map(({ figure, state, scene }) => JSON.stringify([figure, state, scene])))
  const names = Object.keys(files)
  expect(names).toHaveLength(steps.length + 1)
  expect(names.slice(0, 2)).toEqual([
    expect.stringMatching(/^01-[a-z-]+\.png$/),
    expect.stringMatching(/^02-/),
  ])
  expect(names.at(-1)).toBe('notes.txt')
  const pictures = names.slice(0, -1).map((name) => Buffer.from(files[name]!))
  for (const picture of pictures) {
    expect(picture.subarray(1, 4).toString('latin1')).toBe('PNG')
    expect(picture.readUInt32BE(16)).toBe(1920)
    expect(picture.length).toBeGreaterThan(20_000)
  }
  expect(new Set(pictures.map((picture) => picture.toString('base64'))).size).toBe(sights.size)
  const notes = strFromU8(files['notes.txt']!)
  for (const { title } of steps) expect(notes).toContain(title)
  expect(notes).toContain('For the teacher:')
  await expect(page.locator('.slides-said')).toHaveText(/^Saved as two-gates-two-paths\.zip: \d+ pictures/)
})
