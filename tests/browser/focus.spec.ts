import { expectSeen, press, tabTo } from './hand.ts'
import { goTo, openExample } from './jobs.ts'
import { expect, test } from './page.ts'

/** Pages on which something stays at an edge while the rest scrolls below it. */
const pages = [
  'find/#pass=1.right.500.wR3-R99x8&found=strip.3.seized',
  'class/the-hold/speaker/',
  'chapters/the-cam-gate/',
]

for (const [name, viewport] of [
  ['of a phone', { width: 360, height: 740 }],
  ['that is low', { width: 640, height: 360 }],
] as const)
  test(`on a screen ${name} each stop of Tab is seen, to the page’s last and back again`, async ({
    page,
  }) => {
    await page.setViewportSize(viewport)
    for (const address of pages) {
      await page.goto(`./${address}`)
      await expect(page.locator('.machine[data-live], .find[data-live]').first()).toBeVisible()
      // What may be wrong is computed in the background, and comes above the last stops.
      if (address.startsWith('find')) await expect(page.locator('.answer').first()).toBeVisible()
      if (!address.includes('speaker')) await tabTo(page, '.foot .ways a:last-child')
      else if (name === 'of a phone') await tabTo(page, '.class-letters input')
      else {
        // There the buttons that are pressed least are folded away behind the last one.
        await tabTo(page, '.speaker-more')
        await press(page, 'Enter')
        await tabTo(page, '.class-letters input', 'Shift+Tab')
        await tabTo(page, '.speaker-more')
      }
      await tabTo(page, 'main button, main a', 'Shift+Tab')
      await tabTo(page, 'main button:not(:disabled)', 'Shift+Tab')
    }
  })

test('at 320 pixels no stop is under what stays at an edge: on the measuring page, and where a picture or a film is saved', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 640 })
  await page.goto('./measure/#own=1_presserLeft-1.1')
  await expect(page.locator('.measure[data-live]')).toBeVisible()
  await tabTo(page, '.foot .ways a:last-child')
  await page.goto('./workbench/')
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await page.locator('.save-figure').first().focus()
  await page.keyboard.press('Enter')
  await expect(page.locator('.save-dialog .save-preview')).toHaveJSProperty('complete', true)
  await tabTo(page, '.save-now')
  await page.locator('.save-dialog').getByText('Film', { exact: true }).click()
  await tabTo(page, '.save-now')
})

test('cautions that were read and fold up leave their button in sight, at 320 pixels', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 })
  await openExample(page)
  const work = await goTo(page, 'Work')
  await work.getByLabel('Refit the belt').check()
  await work.getByRole('button', { name: 'I have read this' }).focus()
  await page.keyboard.press('Enter')
  const button = work.getByRole('button', { name: 'Show the cautions in full' })
  await expect(button).toBeFocused()
  await expectSeen(page)
})
