import { machineWeighed } from '@/words/own-dimensions.ts'
import { nothingEntered } from '@/words/whole-finding.ts'
import { settingsFirst } from '@/words/symptoms.ts'
import {
  type Locator,
  type Page,
  expect,
  slowness,
  watchScripts,
  test as freshTest,
  lastingTest as test,
} from './page.ts'
import { testCard } from '@/find/test-card.ts'
import { readSession } from '@/link/session-link.ts'
import { library, momentOf } from './model.ts'
import { phone } from './phone.ts'
import { dealtMachine } from '@/find/deal-machine.ts'
import { dealtFault, practiceFault } from '@/find/practice.ts'

/** Opens the page on a session's link, or as it is, and waits for its first answers. */
const openFind = async (page: Page, session = ''): Promise<void> => {
  await page.goto(session === '' ? './find/' : `./find/#${session}`)
  await expect(page.locator('.find[data-live]')).toBeVisible()
  await expect(page.locator('.answer').first()).toBeVisible()
}

const needle = (page: Page, name: string): Locator => page.getByRole('gridcell', { name: `${name},` })
const first = (page: Page): Locator => page.locator('.answer h3').first()

/** The session in the address, once it has followed. */
const fragment = (page: Page): string => new URL(page.url()).hash.slice(1)

freshTest(
  'every eighth needle from R3 brings strip 3 to the top, and its link brings it all back',
  async ({ page, context }) => {
    await openFind(page)
    await expect(first(page)).toHaveText('Nothing is wrong, as far as this shows')
    await needle(page, 'R3').click()
    await expect(needle(page, 'R3')).toHaveAccessibleName('R3, wrong: missed')
    await page.getByRole('button', { name: 'Every eighth like it' }).click()
    await expect(first(page)).toHaveText('Strip 3 seized')
    await expect(page.locator('.answer').first()).toContainText('almost certain')
    await expect.poll(() => fragment(page)).toBe('pass=1.right.500.p1.wL94-R99x8')

    const fresh = await context.newPage()
    await fresh.goto(page.url())
    await expect(first(fresh)).toHaveText('Strip 3 seized')
    await expect(fresh.getByRole('gridcell', { name: 'L94, wrong: missed' })).toBeVisible()
    const answers = (of: Page): Promise<string> => of.locator('.answers').innerText()
    expect(await answers(fresh)).toBe(await answers(page))
    await fresh.close()

    await page.getByRole('button', { name: 'Undo' }).click()
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect(first(page)).toHaveText('Nothing is wrong, as far as this shows')
  },
)

test('with column 1 at R13 the bed, the answers, the finding and the link go by it', async ({
  page,
  context,
}) => {
  await openFind(page)
  const field = page.getByLabel('Column 1 at needle')
  await field.fill('L12')
  await field.press('Enter')
  await expect(page.locator('.row-said')).toContainText('L12, R13 and R37')
  await expect(field).toHaveValue('R13')
  await expect.poll(() => fragment(page)).toBe('first=R13&pass=1.right.500.p1')
  const lines = page.locator('.bed-line')
  await expect(lines.nth(5).getByRole('gridcell').first()).toHaveAccessibleName(/^R13,/)
  // Row 1 asks for column 3, which is R15 now; R3 is of column 15.
  await needle(page, 'R15').click()
  await expect(needle(page, 'R15')).toHaveAccessibleName('R15, wrong: missed')
  await page.getByRole('button', { name: 'Every eighth like it' }).click()
  await expect(first(page)).toHaveText('Strip 3 seized')
  await page.getByRole('button', { name: 'Keep as the finding' }).first().click()
  await expect(page.locator('.finding-part')).toHaveText('Strip 3 seized')
  await expect.poll(() => fragment(page)).toContain('first=R13&pass=1.right.500.p1.w')
  const machine = await page.locator('.finding a[href*="workbench"]').first().getAttribute('href')
  expect(machine).toContain('first=R13')

  const fresh = await context.newPage()
  await fresh.goto(page.url())
  await expect(first(fresh)).toHaveText('Strip 3 seized')
  await expect(fresh.getByLabel('Column 1 at needle')).toHaveValue('R13')
  await fresh.close()

  await field.fill('Q9')
  await field.press('Enter')
  await expect(page.locator('.row-said')).toContainText('“Q9” is no needle')
  await expect(page.locator('.row-said')).toContainText('R13 is kept')
})

test('one needle, pressed until it is not looked at, and a drag over several', async ({ page }) => {
  await openFind(page)
  const r3 = needle(page, 'R3')
  await r3.click()
  await expect(first(page)).toHaveText(/Needle R3 bent|Catch of R3 broken/)
  await r3.click()
  await expect(r3).toHaveAccessibleName('R3, not looked at')
  await r3.click()
  await expect(r3).toHaveAccessibleName('R3, selected, as the card asks')
  await r3.hover()
  await page.mouse.down()
  await needle(page, 'R6').hover()
  await needle(page, 'R5').hover()
  await page.mouse.up()
  await expect.poll(() => fragment(page)).toBe('pass=1.right.500.p1.wR3-R5')
})

test('a typed list is read with its errors, and stays as it was typed', async ({ page }) => {
  await openFind(page)
  const typed = page.getByLabel('Or type the wrong needles')
  await typed.fill('r3 R11-R12, R300 R3 <b>x</b>')
  await typed.press('Enter')
  const said = page.locator('.typed-said')
  await expect(said).toContainText('Marked 3 needles wrong')
  await expect(said).toContainText('“R300”')
  await expect(said).toContainText('You named R3 more than once.')
  await expect(typed).toHaveValue('r3 R11-R12, R300 R3 <b>x</b>')
  await expect(needle(page, 'R12')).toHaveAccessibleName('R12, wrong: missed')
  await page.getByRole('button', { name: 'Start again' }).click()
  await expect(needle(page, 'R12')).toHaveAccessibleName('R12, selected, as the card asks')
  await expect(said).toBeEmpty()
  await expect(typed).toHaveValue('')
})

test('a row that the card has not is said, and nothing that was entered is lost', async ({ page }) => {
  await openFind(page)
  await needle(page, 'R3').click()
  await page.getByRole('spinbutton', { name: /^Row/ }).fill('99')
  await page.getByRole('spinbutton', { name: /^Row/ }).press('Enter')
  await expect(page.locator('.row-said')).toHaveText(
    'This card has no row “99”: its rows are 1 to 32. Row 1 is kept.',
  )
  await expect.poll(() => fragment(page)).toBe('pass=1.right.500.p1.wR3')
  await page.reload()
  await expect(needle(page, 'R3')).toHaveAccessibleName('R3, wrong: missed')
  await page.getByRole('button', { name: 'Start again' }).click()
  await expect(needle(page, 'R3')).toHaveAccessibleName('R3, selected, as the card asks')
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('link', { name: 'Needle R3 bent' }).click()
  await expect(page).toHaveURL(/faults\/needle-bent/)
  await page.goBack()
  await expect(needle(page, 'R3')).toHaveAccessibleName('R3, wrong: missed')
})

test('what was entered a moment before a reload, or before leaving, is there again', async ({ page }) => {
  await openFind(page)
  await needle(page, 'R3').click()
  await page.reload()
  await expect(needle(page, 'R3')).toHaveAccessibleName('R3, wrong: missed')
  await needle(page, 'R5').click()
  await needle(page, 'R8').click()
  await page.getByRole('link', { name: 'Teach' }).click()
  await expect(page).toHaveURL(/teach/)
  await page.goBack()
  for (const name of ['R3', 'R5', 'R8'])
    await expect(needle(page, name)).toHaveAccessibleName(`${name}, wrong: missed`)
})

test('by keyboard alone: from needle to needle, a range, and every eighth', async ({ page }) => {
  await openFind(page)
  await needle(page, 'R1').focus()
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('Space')
  await expect.poll(() => fragment(page)).toBe('pass=1.right.500.p1.wR3_R4')
  await page.keyboard.press('ArrowDown')
  await expect(needle(page, 'R28')).toBeFocused()
  await page.keyboard.press('Tab')
  await expect(page.getByRole('button', { name: 'Every eighth like it' })).toBeFocused()
})

test('what was shown right and what was not looked at is said once the hands rest', async ({ page }) => {
  await openFind(page, 'pass=1.right.500.wL94-R99x8.nR90-R100')
  const shown = page.locator('.finding-shown')
  await expect(shown).toContainText('Shown right: ', { timeout: 20_000 })
  await expect(shown).toContainText('Not looked at yet: a pass to the left; a fast pass')
  await expect(shown).toContainText('11 needles from R90 to R100')
})

test('a check’s outcome goes in with one tap, and the finding leads on and prints', async ({ page }) => {
  await openFind(page, 'pass=1.right.500.wL94-R99x8')
  await expect(first(page)).toHaveText('Strip 3 seized')
  await page.locator('.next-others summary').click()
  await page
    .getByRole('button', {
      name: 'Do this one: Put in a card of all holes and push the carriage across to the right.',
    })
    .click()
  await expect(page.locator('.next-words')).toContainText(
    'Put in a card of all holes and push the carriage across to the right.',
  )
  await page
    .locator('.next-outcomes')
    .getByRole('button', { name: /Strip 3 seized/ })
    .first()
    .click()
  await expect(page.locator('.pass-list button')).toHaveCount(2)
  await expect(page.locator('.pass-card')).toHaveText(/holes/i)
  await expect(first(page)).toHaveText('Strip 3 seized')

  await page.getByRole('button', { name: 'Keep as the finding: Strip 3 seized' }).click()
  await expect(page.getByRole('heading', { name: 'The finding' })).toBeFocused()
  await expect(page.locator('.finding-part')).toHaveText('Strip 3 seized')
  await expect(page.locator('.finding-checked li')).toHaveCount(2)
  await expect.poll(() => fragment(page)).toContain('found=strip.3.seized')
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('.finding-part')).toBeVisible()
  await expect(page.locator('.bed-grid')).toBeHidden()
  await page.emulateMedia({ media: 'screen' })
  await page.getByRole('link', { name: 'See it on the workbench' }).click()
  await expect(page.locator('.chips')).toContainText('Strip 3 seized')
})

test('before anything is entered it says so, with pictures to start from', async ({ page }) => {
  await openFind(page)
  await expect(page.locator('.whole-finding')).toHaveText(nothingEntered)
  await expect(page.locator('.sights').getByRole('button', { name: 'Every eighth needle' })).toBeInViewport()
  await page.goto('about:blank')
  await page.goto('./find/#pass=1.right.500.wR3-R99x8')
  await expect(page.locator('.answer').first()).toBeVisible()
  await expect(page.locator('.sights')).toBeHidden()
})

test('starts from a picture and from three questions', async ({ page }) => {
  await openFind(page)
  const starts = page.getByText('Start from a picture or three questions')
  await page.locator('.sights').getByRole('button', { name: 'Every eighth needle' }).click()
  await expect(first(page)).toHaveText('Strip 4 seized')
  await starts.click()
  await page.getByLabel('every 24th').check()
  await page.getByLabel('One of the wrong needles').fill('X9')
  await page.getByRole('button', { name: 'Fill it in' }).click()
  await expect(page.locator('.questions-said')).toContainText('“X9” is no needle')
  await page.getByLabel('One of the wrong needles').fill('R3')
  await page.getByRole('button', { name: 'Fill it in' }).click()
  await expect(first(page)).toContainText('Pin 3 stuck down')
  await expect(first(page)).toContainText('look the same')
})

test('practice: passes are shown, the answers are kept back, and a course is shown after the answer', async ({
  page,
}) => {
  const seed =
    Array.from({ length: 99 }, (_, n) => n).find((n) => practiceFault(n).kind === 'strip.seized') ?? 0
  const strip = practiceFault(seed).at[0] ?? 0
  await page.goto(`./find/#practice=${seed}`)
  const practice = page.getByRole('region', { name: 'Practise: what is broken?' })
  await expect(practice).toBeVisible()
  await expect(page.locator('.likely')).toBeHidden()
  await expect(page.getByRole('gridcell', { name: /wrong: missed/ }).first()).toBeVisible()
  await page.getByRole('button', { name: 'Another pass' }).click()
  await expect(practice).toContainText('You have seen 2 passes, about 1 minute of work.')
  await practice.getByLabel('It is this:').selectOption({ label: 'Strip seized' })
  await practice.getByLabel('Strip', { exact: true }).fill('9')
  await practice.getByRole('button', { name: 'Say so' }).click()
  await expect(practice).toContainText('there is no strip 9')
  await practice.getByLabel('Strip', { exact: true }).fill(String(strip))
  await practice.getByRole('button', { name: 'Say so' }).click()
  await expect(practice).toContainText(`Right, in 2 passes, about 1 minute: Strip ${strip} seized.`)
  await expect(practice.getByRole('listitem').first()).toContainText('Row 1 to the right')
  await expect(practice).toContainText('The best course: 2 passes, about 1 minute.')
  await expect(practice).toContainText('No other passes prove it in less time')
  await expect(practice).toContainText('The page’s own advice does not know the fault.')
  await expect(first(page)).toContainText(`Strip ${strip} seized`)
  // A pass that is taken back was seen all the same.
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.locator('.pass-list button')).toHaveCount(1)
  await expect(practice).toContainText('You have seen 2 passes, about 1 minute of work.')
  await practice.getByRole('button', { name: 'Stop practising' }).click()
  await expect(practice).toBeHidden()
  await expect(page.locator('.likely')).toBeVisible()
})

test('practice deals an old machine, judges what was named, and sets its own course beside', async ({
  page,
}) => {
  test.slow()
  await page.goto('./find/#deal=12&level=3&pass=1.right.500')
  const practice = page.getByRole('region', { name: 'Practise: what is broken?' })
  await expect(practice).toContainText('four to eight things are wrong')
  const { faults } = dealtMachine(12, 3, dealtFault)
  const seized = faults.find(({ kind }) => kind === 'strip.seized')!
  await practice.getByLabel('It is this:').selectOption({ label: 'Strip seized' })
  const strip = practice.getByLabel('Strip', { exact: true })
  for (const number of [String(seized.at[0]), '5']) {
    await strip.fill(number)
    await strip.press('Enter')
  }
  await practice.getByRole('button', { name: 'Take back: Strip 5 seized' }).click()
  await practice.getByRole('button', { name: 'That is all' }).click()
  await expect(practice).toContainText(`Right: strip ${seized.at[0]} seized.`)
  await expect(practice).toContainText(`of ${faults.length} places that are wrong`, { timeout: 60_000 })
  await practice.getByRole('radio', { name: 'two or three' }).check()
  await expect(practice).toContainText('Two or three parts of this machine are broken.')
  await expect.poll(() => fragment(page)).toMatch(/^deal=\d+&level=2&/)
})

test('what an owner says goes into the link, shows what it changes, and changes the answer', async ({
  page,
}) => {
  await openFind(page, 'pass=1.right.500.wR3')
  await page.getByText('What its owner says').click()
  const group = page.getByRole('group', { name: 'Has it stood for years?' })
  await group.getByRole('radio', { name: 'yes' }).focus()
  await page.keyboard.press('Space')
  await expect(group).toContainText('set oil')
  await expect.poll(() => fragment(page)).toContain('asked=stood.yes')
  await page.reload()
  await expect(page.locator('.intake-count')).toHaveText('(1 answer)')
  await page.getByRole('button', { name: 'Undo' }).waitFor()
})

test('several things found by hand go in together', async ({ page }) => {
  await openFind(
    page,
    'card=all-holes&pass=1.right.500.wL94-R99x8_L90-R98x8&pass=2.left.500.wL94-R99x8_L90-R98x8',
  )
  await page.locator('.next-others summary').click()
  await page.getByRole('button', { name: /^Do this one: Press each strip/ }).click()
  const outcomes = page.locator('.next-outcomes')
  await outcomes.getByLabel('Strip 3 seized').check()
  await outcomes.getByLabel('Strip 7 seized').check()
  await outcomes.getByRole('button', { name: 'Note 2 finds' }).click()
  await expect.poll(() => fragment(page)).toContain('check=strips.strip.3.seized&check=strips.strip.7.seized')
  await expect(page.locator('.answers-title')).toBeFocused()
})

for (const [width, height] of [
  [1440, 900],
  [1280, 720],
] as const)
  test(`what to check next is seen without scrolling, with several places, at ${width} by ${height}`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height })
    await openFind(page, 'card=all-holes&pass=1.right.500.wL94-R99x8_L90-R98x8_L92-R100x8')
    await expect(page.locator('.answer')).not.toHaveCount(1)
    const words = page.locator('.next-words')
    await expect(words).not.toBeEmpty()
    await expect(words).toBeInViewport({ ratio: 1 })
    await expect(page.getByRole('heading', { name: 'What happened?' })).toBeInViewport()
  })

test('on a phone the bar at the foot says what to check next', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 })
  await openFind(page, 'pass=1.right.500.wL94-R99x8')
  await expect(page.locator('.now-next')).toBeInViewport()
  await expect(page.locator('.now-next')).toHaveText(/^Next: \S/)
})

test('the likely parts are ringed on the machine, with their places in the ranking', async ({ page }) => {
  await openFind(page)
  const machine = page.locator('.likely-machine')
  await expect(machine).toBeHidden()
  await needle(page, 'R3').click()
  await expect(machine.locator('.mark-number').first()).toHaveText('1')
  await expect(machine.getByRole('img')).toHaveAccessibleName(/^The machine\. Ringed: .*1, Needle R3/)
  await expect(first(page)).toHaveAttribute('data-number', '1')
  await page.getByText('The bed that it predicts beside yours').first().click()
  await expect(page.getByRole('img', { name: 'The bed as you noted it' })).toBeVisible()
  await page
    .getByRole('button', { name: /^Keep as the finding/ })
    .first()
    .click()
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('.finding-machine .mark-name')).toHaveText('Needle R3')
  await expect(machine).toBeHidden()
})

test('where a pass selected nothing, it says which settings to rule out first', async ({ page }) => {
  await openFind(page, 'card=all-holes&pass=1.right.500.wL100-R100')
  const settings = page.locator('.settings-first')
  const { nothing = 'no words', everything = 'no words' } = settingsFirst
  await expect(settings).toContainText(nothing)
  await expect(settings.getByText(everything)).toBeHidden()
  await expect(settings.getByRole('link', { name: 'Decide it step by step' })).toBeVisible()
  // Not looked at, and then right.
  for (let n = 0; n < 2; n++) await needle(page, 'R3').click()
  await expect(settings).toBeHidden()
})

test('where a note is likelier a slip, it says which needles to look at again', async ({ page }) => {
  // The same row under the pins twice: R3 cannot have come out both ways.
  await openFind(page, 'pass=1.right.500.wR3&pass=1.right.500')
  const next = page.getByRole('region', { name: 'What to check next' })
  await expect(next).toContainText('Look at the bed again before you open anything: 1 note')
  await page.locator('.again summary').click()
  await next.getByRole('button', { name: 'Show them: Row 1 to the right' }).click()
  await expect(page.locator('.pass-list [aria-pressed="true"]')).toContainText('1 wrong')
  await expect(page.locator('.needle:focus')).toHaveAttribute('data-doubt', '')
  await next.getByRole('button', { name: 'Note this pass again: Row 1 to the right' }).click()
  await expect(page.locator('.again')).toBeHidden()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.locator('.again')).toBeVisible()
})

test('says the whole in a sentence, and which needles speak for a place', async ({ page }) => {
  await openFind(page, 'pass=1.right.500.wL94-R99x8&pass=1.right.500.wL94-R99x8')
  await expect(page.locator('.whole-finding')).toHaveText('Strip 3 no longer moves.')
  await expect(page.locator('.finding-remarks')).toContainText('The oil seems')
  const top = page.locator('.answer').first()
  await expect(top.locator('.why')).toContainText('speak for it, none against.')
  await top.getByRole('button', { name: 'Show the needles' }).click()
  await expect(page.locator('.needle:focus')).toHaveAccessibleName(/wrong: missed/)
})

test('a finding says whether it is computed for the training machine or for one with its own dimensions', async ({
  page,
}) => {
  const found = 'pass=2.right.500.wL94-R99x8&found=strip.3.seized'
  await openFind(page, found)
  await expect(page.locator('.finding-of')).toHaveText(machineWeighed({}))
  await page.goto('about:blank')
  await openFind(page, `${found}&own=1_pitch-5`)
  await expect(page.locator('.finding-of')).toHaveText(/^a machine with dimensions of its own/)
})

test('a row noted the other way round opens the workbench with the bed that was seen', async ({ page }) => {
  await openFind(page, 'pass=2.right.500.wL94-R99x8&found=strip.3.seized')
  await expect(page.locator('.finding-moved')).toContainText('laid in one row further on')
  const href = await page.getByRole('link', { name: 'See it on the workbench' }).getAttribute('href')
  const { came, asked } = momentOf(href?.split('#')[1] ?? '').run.passOf(1)
  const wrong = came.flatMap((out, n) => (out === asked[n] ? [] : [n]))
  expect(wrong.length).toBeGreaterThan(5)
  expect(wrong.every((n) => (n - 102) % 8 === 0)).toBe(true)
})

test('says what of a link it could not read, and keeps the rest', async ({ page }) => {
  await openFind(page, 'card=nix&pass=99.right.500.wR300_R3&colour=red')
  await expect(page.locator('.find-notice')).toContainText('“nix”')
  await expect(page.locator('.find-notice')).toContainText('“R300”')
  await expect(needle(page, 'R3')).toHaveAccessibleName('R3, wrong: missed')
})

freshTest(
  'nothing on the page waits for the answers, and they are there within four seconds',
  async ({ page }) => {
    await page.addInitScript(() => {
      new PerformanceObserver((list) => {
        const before = Number(Reflect.get(window, 'longest') ?? 0)
        const longest = Math.max(before, ...list.getEntries().map(({ duration }) => duration))
        Object.assign(window, { longest })
      }).observe({ type: 'longtask' })
    })
    await openFind(page, 'pass=1.right.500.wL94-R99x8&pass=2.left.500&pass=3.right.500&pass=4.left.1500')
    for (const name of ['L97', 'L50', 'R21']) await needle(page, name).click()
    /** How long a mark's answers take, and the longest that the page waits meanwhile, in ms. */
    const markOf = async (name: string, wrong: number): Promise<{ answers: number; wait: number }> => {
      await expect(page.locator('.find')).toHaveAttribute('data-ms', /./)
      await page.evaluate(() => Object.assign(window, { longest: 0 }))
      await page.locator('.find').evaluate((find) => find.removeAttribute('data-ms'))
      await needle(page, name).click()
      await expect(page.locator('.pass-list button').last()).toContainText(`${wrong} wrong`)
      await expect(page.locator('.find')).toHaveAttribute('data-ms', /./)
      return {
        answers: Number(await page.locator('.find').getAttribute('data-ms')),
        wait: await page.evaluate(() => Number(Reflect.get(window, 'longest') ?? 0)),
      }
    }
    // The best of three: what else the machine does may hold up one or two.
    const slow = await slowness(page)
    const marks = [await markOf('R81', 4), await markOf('R57', 5), await markOf('L21', 6)]
    expect(Math.min(...marks.map(({ answers }) => answers))).toBeLessThan(4000 * slow)
    expect(Math.min(...marks.map(({ wait }) => wait))).toBeLessThan(150 * slow)
  },
)

freshTest('scripts before the worker take at most 70 kB', async ({ page }) => {
  // The worker's own file is named after it.
  const scripts = watchScripts(page, (url) => !/\/find-[^/]+\.js$/.test(url))
  await openFind(page)
  expect(page.workers().map((worker) => worker.url())).toEqual([expect.stringMatching(/\/find-[^/]+\.js$/)])
  const { files, bytes } = await scripts()
  console.log(`find scripts: ${(bytes / 1000).toFixed(1)} kB in ${files} files`)
  expect(bytes).toBeLessThanOrEqual(70_000)
})

test.describe('on a phone', () => {
  test.use(phone)

  freshTest(
    '24 needles at a time, each as large as a finger, with the first answer in sight',
    async ({ page }) => {
      await openFind(page)
      await expect(needle(page, 'R24')).toBeInViewport({ ratio: 1 })
      const shown = page.locator('.bed-line .needle').filter({ visible: true })
      await expect(shown).toHaveCount(24)
      const box = await needle(page, 'R3').boundingBox()
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(43.9)
      await page.getByRole('button', { name: 'Change' }).tap()
      await page.getByRole('radio', { name: '← left' }).tap()
      await expect(page.locator('.pass-short-words')).toContainText('Row 1 to the left')
      await page.getByRole('radio', { name: '→ right' }).tap()
      await page.getByRole('button', { name: 'Done' }).tap()
      await expect(page.locator('.find-now')).toBeHidden()
      await needle(page, 'R3').tap()
      await expect(needle(page, 'R3')).toHaveAccessibleName('R3, wrong: missed')
      await page.getByRole('button', { name: 'Every eighth like it' }).tap()
      await expect(page.locator('.find-now')).toContainText('Strip 3 seized')
      await expect(page.locator('.find-now')).toBeVisible()
      await page.getByRole('button', { name: 'Needles →' }).tap()
      await expect(needle(page, 'R27')).toBeVisible()
      await expect(needle(page, 'R27')).toHaveAccessibleName('R27, wrong: missed')
      const width = (): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth)
      expect(await width()).toBeLessThanOrEqual(360)
      for (const button of await page.locator('.find button, .find summary').filter({ visible: true }).all())
        expect((await button.boundingBox())?.height ?? 44).toBeGreaterThanOrEqual(43.9)
      await page.getByRole('button', { name: 'Practise' }).tap()
      await expect(page.locator('.practice')).toBeInViewport()
      expect(await width()).toBeLessThanOrEqual(360)
    },
  )
})

test('the card that shows every fault goes to the search with its passes, and to the workbench', async ({
  page,
}) => {
  const found = testCard()
  await page.goto('./find/test-card/')
  await expect(page.locator('main')).toContainText(`It sorts them into ${found.classes.length} classes`)
  await page.getByRole('link', { name: 'Note what you see' }).click()
  await expect(page.locator('.find[data-live]')).toBeVisible()
  const { session, troubles } = readSession(fragment(page), library)
  expect(troubles).toEqual([])
  expect(session.passes).toHaveLength(found.card.length * found.runs.length + 1)
  expect(session.passes.every(({ marks }) => marks.every((mark) => mark === 'n'))).toBe(true)
  await page.goBack()
  await page.getByRole('link', { name: 'Open it on the workbench' }).click()
  await expect(page.locator('.own-which')).toContainText(`Your own card, ${found.card.length} rows`)
})

freshTest('works another card out when asked, says how far it is, and stops when asked', async ({ page }) => {
  // A worker that never comes keeps the search from being over before it is stopped.
  await page.route(/test-card-worker/, () => undefined)
  await page.goto('./find/test-card/')
  const another = page.getByRole('region', { name: 'Another card that does the same' })
  await another.getByRole('button', { name: 'Work one out' }).click()
  await expect(another.getByRole('progressbar')).toBeVisible()
  await another.getByRole('button', { name: 'Cancel' }).click()
  await expect(another.getByRole('status')).toHaveText('Stopped.')
  await page.unroute(/test-card-worker/)
  // The best of three: what else the machine does may hold up one or two.
  const most = 3000 * (await slowness(page))
  const times: number[] = []
  while (times.length < 3 && !times.some((ms) => ms < most)) {
    await another.evaluate((region) => region.removeAttribute('data-ms'))
    await another.getByRole('button', { name: 'Work one out' }).click()
    await expect(another).toHaveAttribute('data-ms', /./)
    await expect(another.getByRole('status')).toContainText('It shows every single fault')
    times.push(Number(await another.getAttribute('data-ms')))
  }
  expect(Math.min(...times)).toBeLessThan(most)
  await expect(another.locator('.card-rows')).toHaveText(/^row 1 {2}[o.]{24}\nrow 2 {2}[o.]{24}/)
  await another.getByRole('link', { name: 'Note what you see with this card' }).click()
  await expect(page.locator('.find[data-live]')).toBeVisible()
  const { session, troubles } = readSession(fragment(page), library)
  expect(troubles).toEqual([])
  expect(session.passes[0]?.card.kind).toBe('own')
})
