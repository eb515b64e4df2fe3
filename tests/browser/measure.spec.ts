import { expect, type Locator, type Page, lastingTest as test } from './page.ts'

const open = async (page: Page, fragment = ''): Promise<void> => {
  await page.goto(`./measure/${fragment}`)
  await expect(page.locator('.measure[data-live]')).toBeVisible()
}

const item = (page: Page, heading: string): Locator =>
  page.locator('.measure-item').filter({ has: page.getByRole('heading', { name: heading, exact: true }) })

const enter = async (page: Page, heading: string, column: string, text: string): Promise<void> => {
  const field = item(page, heading).getByLabel(column)
  await field.fill(text)
  await field.press('Tab')
}

const verdict = (page: Page): Locator => page.locator('.measure-verdict')

test('a presser that is too high to the left is found, with what to set, and the machine goes on to the workbench', async ({
  page,
}) => {
  await open(page)
  await expect(verdict(page)).toHaveText(/^Nothing is measured yet/)
  await enter(page, 'Dip of the presser, moving left', 'This machine', '1,1')
  await expect(verdict(page)).toHaveText(
    /The least left is 0\.2\s*mm ± 0\.05\s*mm: hold: dip past the catch, moving left/,
  )
  await expect(page).toHaveURL(/#own=1_presserLeft-1\.1$/)
  await expect(page.locator('.measure-settings li').first()).toHaveText(
    /Presser, moving left: at 1\.1\s*mm on its worse side only 0\.2\s*mm are left\. Set it 0\.25\s*mm deeper/,
  )
  await expect(page.locator('.measure-margins tr', { hasText: 'Hold: dip past the catch' })).toContainText(
    'the presser’s dip, moving left',
  )
  await page.reload()
  await expect(verdict(page)).toContainText('0.2')
  await page.getByRole('link', { name: 'Turn this machine on the workbench' }).click()
  await expect(page).toHaveURL(/workbench\/#own=1_presserLeft-1\.1/)
})

test('the first field is in sight at once; the number of needles and the needle of column 1 go along', async ({
  page,
}) => {
  await page.setViewportSize({ width: 1280, height: 720 })
  await open(page)
  const count = item(page, 'Number of needles')
  const box = await count.getByLabel('This machine').boundingBox()
  expect(box && box.y + box.height).toBeLessThan(720)
  await expect(page.getByText('Before you begin:')).toBeInViewport()
  await enter(page, 'Number of needles', 'This machine', '161')
  await expect(count.locator('.measure-trouble')).toHaveText(/so their number is even/)
  await enter(page, 'Number of needles', 'This machine', '160')
  await expect(page).toHaveURL(/#own=1_bed-160$/)
  await page.getByText('Find it with one hole').click()
  await page.getByLabel('Column of the hole').fill('3')
  await page.getByRole('group', { name: 'Needles L24 to R24' }).getByRole('button', { name: 'R15' }).click()
  await expect(page.getByLabel('Column 1 is at needle')).toHaveValue('R13')
  await expect(page.locator('.hole-finder-said')).toHaveText(/^Column 1 is at R13/)
  await expect(page).toHaveURL(/#first=R13&own=1_bed-160$/)
  await page.getByRole('link', { name: 'Turn this machine on the workbench' }).click()
  await expect(page.locator('.needle-last')).toHaveValue('R80')
  await page.locator('.needle-last').fill('R81')
  await page.locator('.setting-needles button').click()
  await expect(page.locator('.machine [role="status"]', { hasText: 'L80 to R80' }).first()).toBeAttached()
})

test('a presser too shallow for its catches fails, and exactness decides whether that is certain', async ({
  page,
}) => {
  await open(page)
  await enter(page, 'Dip of the presser, moving right', 'This machine', '0.85')
  await expect(verdict(page)).toHaveText(
    /^With these values this fails: hold: dip past the catch, moving right\.$/,
  )
  await enter(page, 'Dip of the presser, moving right', 'Exact to ±', '0.2')
  await expect(verdict(page)).toHaveText(/too near to tell/)
})

test('a value that can’t be gets a sentence at its field, and nothing else is touched', async ({ page }) => {
  await open(page)
  await enter(page, 'Height of a pin through a hole', 'This machine', '0.11 in')
  await expect(page).toHaveURL(/pinHigh-2\.794/)
  const low = item(page, 'Height of a pin stopped by card')
  await enter(page, 'Height of a pin stopped by card', 'This machine', '3')
  await expect(low.locator('.measure-trouble')).toHaveText(
    /can’t be: the height of a pin stopped by card would be as large/,
  )
  await enter(page, 'Lower edge of the first gate', 'This machine', 'low')
  await expect(item(page, 'Lower edge of the first gate').locator('.measure-trouble')).toHaveText(
    /“low” is no such measure/,
  )
  await expect(page).toHaveURL(/#own=1_pinHigh-2\.794$/)
  await expect(low.getByLabel('This machine')).toHaveValue('3')
})

test('beside a good machine a difference is said where it is larger than the measuring, with what it eats into', async ({
  page,
}) => {
  await open(page)
  await enter(page, 'Depth of a held butt', 'This machine', '0.8')
  await enter(page, 'Depth of a held butt', 'A good one', '0.95')
  await expect(page.locator('.measure-compare li')).toHaveText(
    /The depth of a held butt is 0\.15\s*mm less than the good one’s\. It takes room from hold, held until the gate|gate, held butt passes below/,
  )
  await enter(page, 'Depth of a held butt', 'A good one', '0.82')
  await expect(page.locator('.measure-compare li')).toHaveText(/No difference is larger/)
})

test('values of a link are shown, and one’s own are kept', async ({ page }) => {
  await open(page)
  await enter(page, 'Needle pitch', 'This machine', '5')
  await page.goto('about:blank')
  await open(page, '#break=belt.slack%3D1.2&own=1_reach-1.3')
  await expect(page.getByText('Yours are kept.')).toBeVisible()
  await expect(item(page, 'Play of the belt').getByLabel('This machine')).toHaveValue('1.2')
  await expect(item(page, 'A catch’s reach').getByLabel('This machine')).toHaveValue('1.3')
  await enter(page, 'Play of the belt', 'This machine', '0.9')
  await page.reload()
  await expect(item(page, 'Play of the belt').getByLabel('This machine')).toHaveValue('0.9')
  await page.getByRole('button', { name: 'Back to mine' }).click()
  await expect(item(page, 'Needle pitch').getByLabel('This machine')).toHaveValue('5')
  await expect(item(page, 'Play of the belt').getByLabel('This machine')).toHaveValue('')
  await page.reload()
  await expect(item(page, 'Needle pitch').getByLabel('This machine')).toHaveValue('5')
  await expect(page.getByText('Yours are kept.')).toBeHidden()
})

test('values of a link can take the place of one’s own, and those come back', async ({ page }) => {
  await open(page)
  await enter(page, 'Needle pitch', 'This machine', '5')
  await page.goto('about:blank')
  await open(page, '#own=1_reach-1.3')
  await page.getByRole('button', { name: 'Keep these instead' }).click()
  await page.goto('about:blank')
  await open(page)
  await expect(item(page, 'A catch’s reach').getByLabel('This machine')).toHaveValue('1.3')
  await expect(item(page, 'Needle pitch').getByLabel('This machine')).toHaveValue('')
  await page.getByRole('button', { name: 'Clear all values' }).click()
  await expect(verdict(page)).toHaveText(/^Nothing is measured yet/)
  await page.getByRole('button', { name: 'Bring back what was there' }).click()
  await expect(item(page, 'A catch’s reach').getByLabel('This machine')).toHaveValue('1.3')
  await page.getByRole('button', { name: 'Clear all values' }).click()
  await enter(page, 'Needle pitch', 'This machine', '5')
  await expect(page.getByRole('button', { name: 'Clear all values' })).toBeVisible()
})

test('a link that can’t be read is named in a sentence', async ({ page }) => {
  await open(page, '#own=7_reach-1.3')
  await expect(page.getByRole('alert')).toHaveText(/of a form that is not known here/)
})

test('a job keeps what was measured before the work and after it, side by side', async ({ page }) => {
  await open(page)
  await enter(page, 'Dip of the presser, moving left', 'This machine', '0.8')
  await page.goto('./job/')
  await page.getByRole('button', { name: 'New job' }).click()
  await page.locator('.job-moments').getByRole('link', { name: 'Measure' }).click()
  const moment = page.locator("[data-moment='measure'].job-moment")
  const time = (name: string): Locator => moment.locator('.measured-time').filter({ hasText: name })
  await time('Before the work').getByRole('button', { name: 'Take what is on' }).click()
  await expect(time('Before the work')).toContainText(/the presser’s dip, moving left 0\.8\s*mm/)
  const row = moment.locator('tr', { hasText: 'Hold: dip past the catch' })
  await expect(row.locator('td')).toHaveText([/^-0\.1\s*mm$/, '–'])
  await open(page)
  await enter(page, 'Dip of the presser, moving left', 'This machine', '1.3')
  await page.goBack()
  await time('After the work').getByRole('button', { name: 'Take what is on' }).click()
  await expect(row.locator('td')).toHaveText([/^-0\.1\s*mm$/, /^0\.4\s*mm$/])
  await time('After the work').getByRole('link', { name: 'Show it there' }).click()
  await expect(page).toHaveURL(/measure\/#own=1_presserLeft-1\.3$/)
})
