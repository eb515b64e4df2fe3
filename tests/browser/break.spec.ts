import { faultOf } from '@/mechanism/read-fault.ts'
import { faultKinds, type FaultKindName, stages } from '@/mechanism/fault-kinds.ts'
import { faultPhrase, faultWords, stageTitles } from '@/words/faults.ts'
import { momentOf, wrongNeedles } from './model.ts'
import { click, expect, middle, open, picture, settled, lastingTest as test, type Page } from './page.ts'

const kinds = Object.keys(faultKinds) as FaultKindName[]

const choose = async (page: Page, kind: FaultKindName): Promise<void> => {
  await page.locator('.break').click()
  await page.locator(`[data-kind="${kind}"]`).click()
}
const field = (page: Page, label: string) => page.locator('.breaker').getByLabel(label, { exact: true })

test('the panel lists every fault there is, under the stage it belongs to', async ({ page }) => {
  await open(page, 'at=R20')
  await page.getByRole('button', { name: 'Break a part' }).click()
  for (const stage of stages) {
    const group = page.getByRole('group', { name: stageTitles[stage] })
    await expect(group.getByRole('heading')).toHaveText(stageTitles[stage])
    const own = kinds.filter((kind) => faultKinds[kind].stage === stage)
    await expect(group.getByRole('button')).toHaveText(
      own.map((kind) => new RegExp(`^\\s*${faultWords[kind].title}\\s*${faultWords[kind].shows}\\s*$`)),
    )
  }
})

test('typing finds a fault by its part or by what it shows', async ({ page }) => {
  await open(page, 'at=R20')
  await page.locator('.break').click()
  const search = page.getByRole('searchbox', { name: 'Find a fault' })
  await expect(search).toBeFocused()
  const found = page.locator('.breaker-list button').filter({ visible: true })
  for (const [words, titles] of [
    ['seized', ['Strip seized']],
    ['oil', ['Strip slow: thick oil', 'Pin held by old oil, now and then']],
    ['every eighth always', ['Strip stuck shifted']],
    ['8th always', ['Strip stuck shifted']],
    ['mirrored', ['Card the wrong way round']],
    ['STRIP', ['Strip seized', 'Strip stuck shifted', 'Strip slow: thick oil']],
  ] as const) {
    await search.fill(words)
    for (const title of titles) await expect(found.filter({ hasText: title })).toHaveCount(1)
    expect(await found.count(), words).toBe(titles.length)
  }
  await search.fill('seized')
  await search.press('Enter')
  await expect(field(page, 'Strip')).toBeFocused()
  await page.getByRole('button', { name: 'Other faults' }).click()
  await search.fill('flux capacitor')
  await expect(found).toHaveCount(0)
  await expect(page.locator('.breaker')).toContainText('No fault is called that')
  await search.fill('')
  await expect(found).toHaveCount(kinds.length)
})

test('every fault of the table can be broken as the panel proposes it, and all be mended', async ({
  page,
}) => {
  await open(page, 'at=R20')
  for (const kind of kinds) {
    await choose(page, kind)
    await page.getByRole('button', { name: 'Break it' }).click()
    const fault = faultOf((await page.locator('.chip').getAttribute('data-fault')) ?? '')
    expect(fault.kind).toBe(kind)
    await expect(page.locator('.chip')).toHaveText(`${faultPhrase(fault)}mend`)
    await page.getByRole('button', { name: 'Mend all' }).click()
    await expect(page.locator('.chips')).toHaveText('nothing')
  }
  expect((await settled(page)).state.faults).toEqual([])
})

test('the number of a part is chosen by pressing it in the drawing', async ({ page }) => {
  await open(page, 'at=R20')
  await choose(page, 'pin.low')
  await click(page, 'pin.7')
  await expect(field(page, 'Column')).toHaveValue('7')
  await page.getByRole('button', { name: 'Other faults' }).click()

  await page.locator('[data-kind="strip.over"]').click()
  await click(page, 'strip.6')
  await expect(field(page, 'Strip')).toHaveValue('6')
  await click(page, 'pin.7')
  await expect(field(page, 'Strip')).toHaveValue('6')
  await page.getByRole('button', { name: 'Other faults' }).click()

  await page.locator('[data-kind="catch.broken"]').click()
  await click(page, 'needle.R4')
  await expect(field(page, 'Needle')).toHaveValue('R4')
  await page.getByRole('button', { name: 'Other faults' }).click()

  await page.locator('[data-kind="card.blocked"]').click()
  const mark = picture(page).locator('.card-row[data-read="now"] .mark').nth(9)
  const { x, y } = await middle(mark)
  await page.mouse.click(x, y)
  await expect(field(page, 'Card row')).toHaveValue('1')
  await expect(field(page, 'Column')).toHaveValue('10')
  await page.getByRole('button', { name: 'Break it' }).click()
  const moment = await settled(page)
  expect(moment.state.faults).toEqual([{ kind: 'card.blocked', at: [1, 10], amount: null }])
  expect(wrongNeedles(moment).length).toBeGreaterThan(2)
  await expect(page.locator('.happening')).toContainText('the card')
})

test('what the panel proposes shows at once: the fault has something to spoil in this row', async ({
  page,
}) => {
  await open(page, 'at=R20')
  for (const kind of [
    'pin.low',
    'rocker.dead',
    'strip.seized',
    'catch.broken',
    'card.blocked',
    'pin.high',
  ] as const) {
    await choose(page, kind)
    await page.getByRole('button', { name: 'Break it' }).click()
    const id = (await page.locator('.chip').getAttribute('data-fault')) ?? ''
    expect(momentOf(`at=R20&break=${id}`).frame.pass.departures.length, id).toBeGreaterThan(0)
    await page.getByRole('button', { name: 'Mend all' }).click()
  }
})

test('a number that cannot be is refused in words, and nothing breaks', async ({ page }) => {
  await open(page, 'at=R20')
  for (const [kind, label, value, words] of [
    ['catch.broken', 'Needle', 'R200', 'there is no needle R200; they run from L100 to R100'],
    ['pin.high', 'Column', '25', 'there is no column 25'],
    ['strip.seized', 'Strip', '<b>3</b>', 'there is no strip'],
    ['card.torn', 'Card row', '150', 'this card has 32 rows'],
    ['sweep.worn', 'How much, in mm', 'a lot', '“a lot” is not a number'],
  ] as const) {
    await choose(page, kind)
    await field(page, label).fill(value)
    await field(page, label).press('Enter')
    await expect(page.getByRole('alert')).toContainText(words)
    await expect(page.locator('.breaker b')).toHaveCount(0)
    await page.getByRole('button', { name: 'Close', exact: true }).click()
  }
  expect((await settled(page)).state.faults).toEqual([])
})

test('a number out of range is brought into it, and that is said', async ({ page }) => {
  await open(page, 'at=R20')
  await choose(page, 'sweep.worn')
  await field(page, 'How much, in mm').fill('7,5')
  await page.getByRole('button', { name: 'Break it' }).click()
  await expect(page.locator('.notice')).toContainText('7.5 is outside 0 to 3 mm, so 3 is used')
  expect((await settled(page)).state.faults).toEqual([{ kind: 'sweep.worn', at: [], amount: 3 }])
})
