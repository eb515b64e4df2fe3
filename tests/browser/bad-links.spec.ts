import { momentOf } from './model.ts'
import { phone } from './phone.ts'
import { edit, expect, frames, open, settled, test as freshTest, lastingTest as test } from './page.ts'

const kept = 'at=R20&break=strip.3.seized'

for (const [what, text, sentence] of [
  ['an unknown fault', `${kept}&break=strip.99.seized`, "The fault “strip.99.seized” can't be read"],
  [
    'an impossible needle',
    `${kept}&break=catch.R200.broken`,
    'there is no needle R200; they run from L100 to R100',
  ],
  ['a place that is none', 'at=middle&break=strip.3.seized', '“middle” is no place for the carriage'],
  [
    'a card of the wrong width',
    `${kept}&card=x.AAAAA`,
    'row 2 is not 24 columns wide, so the 1 before it stand',
  ],
  ['a card without a whole row', `${kept}&card=x.AA`, 'it has no whole row of 24 columns'],
  [
    'an unknown card',
    `${kept}&card=nothing-like-it`,
    'There is no card “nothing-like-it” here; the main card is used.',
  ],
  ['a number out of range', `${kept}&speed=90000`, 'outside 50 to 2000; 2000 is used'],
  ['a row that the card lacks', `${kept}&break=card.torn.150.3`, 'this card has no row 150, only 32'],
  [
    'two states of one strip',
    `${kept}&break=strip.3.over`,
    "can't both be so; the later, “strip.3.over”, counts",
  ],
  ['a name that is unknown', `${kept}&colour=red`, "This site doesn't know “colour”"],
] as const)
  test(`${what} in a link is said in one sentence, and the rest is kept`, async ({ page }) => {
    await open(page, text)
    await expect(page.locator('.notice')).toContainText(sentence)
    expect((await page.locator('.notice').innerText()).match(/[.](?=\s|$)/g)?.length).toBeLessThanOrEqual(2)
    const { state } = momentOf(text)
    await expect(page.locator('.carriage-slider')).toHaveValue(String(state.at))
    await expect(page.locator('.chip')).toHaveCount(state.faults.length)
    await expect(page.locator('.picture')).toBeInViewport()
    await edit(page, 'at=R30')
    await expect(page.locator('.notice')).toHaveText('')
  })

test('a link that says nothing at all shows the page’s own state, and says so', async ({ page }) => {
  await open(page, 'rubbish')
  await expect(page.locator('.notice')).toContainText('“rubbish”')
  await expect(page.locator('.chip')).toHaveText(/Strip 3 seized/)
  await expect(page.locator('.carriage-readout')).toHaveText('R8, moving right')
})

freshTest('markup in a link is text: nothing is made of it and nothing runs', async ({ page }) => {
  const markup = '<img src=x onerror="window.hit=1"><script>window.hit=1</script><b>bold</b>'
  const evil = encodeURIComponent(markup)
  await page.addInitScript(() => {
    addEventListener('DOMContentLoaded', () => {
      const made: string[] = []
      Object.assign(window, { made })
      new MutationObserver((changes) => {
        for (const { addedNodes } of changes)
          for (const node of addedNodes)
            if (/^(img|script|b|svg:script)$/i.test(node.nodeName)) made.push(node.nodeName)
      }).observe(document.body, { childList: true, subtree: true })
    })
  })
  await open(page, `at=R20&note=${evil}&card=${evil}&break=${evil}&seed=${evil}&${evil}=1`)
  await expect(page.locator('.notice')).toContainText('<img src=x')
  await expect(page.locator('.link-note')).toHaveText(`Note with this link: ${markup}`)
  await page.locator('.break').click()
  await frames(page, 12)
  expect(await page.evaluate((): unknown => Reflect.get(window, 'made'))).toEqual([])
  expect(await page.evaluate((): unknown => Reflect.get(window, 'hit'))).toBeUndefined()
  expect((await settled(page)).state.note).toBe(markup)
})

test('a note that came with the link is shown, is kept, and goes with another link', async ({ page }) => {
  await open(page, 'at=R20&note=Look+at+the+third+strip')
  await expect(page.locator('.link-note')).toHaveText('Note with this link: Look at the third strip')
  await page.locator('.carriage-slider').press('ArrowRight')
  expect((await settled(page)).state.note).toBe('Look at the third strip')
  await edit(page, 'at=R20')
  await expect(page.locator('.link-note')).toBeHidden()
})

freshTest('a very long, hostile link does not stop the page', async ({ page }) => {
  await open(
    page,
    `at=R20&${'break=pin.5.low&'.repeat(3000)}note=${'x'.repeat(5000)}&card=x.${'A'.repeat(9000)}`,
  )
  await expect(page.locator('.notice')).not.toHaveText('')
  await page.locator('.carriage-slider').press('ArrowRight')
  await expect(page.locator('.carriage-readout')).toHaveText('R20, moving right')
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
})

const machine = '.machine[data-live]'
const broken = '#at=R20&break=strip.99.seized'
const noFault = "The fault “strip.99.seized” can't be read"

/** Every page that reads a state, a search or a step from its address: one that can't be read, and where that is said. */
for (const [address, alive, notice, sentence] of [
  [`./${broken}`, machine, '.notice', noFault],
  [`./workbench/${broken}`, machine, '.notice', noFault],
  ['./workbench/?beside=oven', machine, '.notice', 'The workbench has no tool “oven”'],
  [`./faults/strip-seized/${broken}`, machine, '.notice', noFault],
  [`./chapters/the-hold/${broken}`, machine, '.notice', noFault],
  ['./chapters/the-hold/#rubbish', machine, '.notice', '“rubbish”'],
  ['./chapters/the-hold/?step=nowhere', machine, '.notice', 'This chapter has no step “nowhere”'],
  [`./class/the-hold/${broken}`, machine, '.notice', noFault],
  ['./class/the-hold/?step=nowhere', machine, '.notice', 'This chapter has no step “nowhere”'],
  ['./class/the-hold/?quiz=7.99', machine, '.notice', 'no question “7.99”'],
  [`./class/the-hold/speaker/${broken}`, machine, '.notice', noFault],
  [`./case/${broken}&end=1`, '.case[data-live]', '.case-notice', noFault],
  ['./find/#pass=1.right.500&found=strip.99.seized', '.answer h3', '.find-notice', noFault],
] as const)
  test(`${address} says what of it can’t be read, and its state is not rewritten`, async ({ page }) => {
    await page.goto(address)
    await expect(page.locator(alive).first()).toBeVisible()
    await expect(page.locator(notice)).toContainText(sentence)
    await frames(page, 30)
    await expect(page.locator(notice)).toBeVisible()
    await expect(page.locator(notice)).toContainText(sentence)
    const { hash } = new URL(address, page.url())
    if (hash !== '') expect(new URL(page.url()).hash).toBe(hash)
  })

test('what was said of a chapter’s link goes with the next step, and then the address follows', async ({
  page,
}) => {
  await page.goto(`./chapters/the-hold/${broken}`)
  await expect(page.locator('.notice')).toContainText(noFault)
  await expect(page.locator('.chapter[data-live]')).toBeVisible()
  await page.keyboard.press('Alt+PageDown')
  await expect(page.locator('.notice')).toHaveText('')
  await expect(page).not.toHaveURL(/strip\.99/)
})

test.describe('on a phone', () => {
  test.use(phone)

  freshTest('what is said of a later step’s link is on the screen', async ({ page }) => {
    await page.goto(`./chapters/the-hold/?step=caught${broken}`)
    await expect(page.locator('.notice')).toContainText(noFault)
    await expect(page.getByRole('heading', { name: 'Caught', exact: true })).toBeInViewport()
    await expect(page.locator('.notice')).toBeInViewport({ ratio: 1 })
  })
})
