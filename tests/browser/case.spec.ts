import { axeFinds } from './axe.ts'
import type { Browser } from '@playwright/test'
import { casePicturesOf } from '@/features/case/pictures.ts'
import { readCase, writeCase } from '@/link/case.ts'
import { faultId } from '@/mechanism/fault.ts'
import { wrongNeedles } from '@/mechanism/sample.ts'
import { wrongParts } from '@/words/case.ts'
import { countWords } from '@/words/case-fabric.ts'
import { goldenCases } from '../golden/case-links.ts'
import { library } from './model.ts'
import {
  drawn,
  expect,
  frames,
  type Page,
  shiftOf,
  watch,
  watchScripts,
  watchShifts,
  test as freshTest,
  lastingTest as test,
} from './page.ts'
import { scanned } from './scan.ts'

const twoFaults = 'at=R8&break=needle.R12.gone&break=strip.3.seized'
const { state } = readCase(twoFaults, library)

/** A case's link text with these words and the two faults. */
const caseText = (title: string, note: string): string =>
  writeCase({ title, state: { ...state, note }, done: '', after: null, left: [] }, library)

const openCase = async (page: Page, text: string, query = ''): Promise<void> => {
  // Elsewhere first: from one case to another only the fragment changes, and the page stays.
  await page.goto('about:blank')
  await page.goto(`./case/${query}#${text}`)
  await expect(page.locator('.case[data-live]')).toBeVisible()
}

/** The two faults, in words, in the picture, and in the fabric, as the model has them. */
const expectTwoFaults = async (page: Page): Promise<void> => {
  for (const { name, words } of wrongParts(state.faults)) {
    await expect(page.locator('.case-parts')).toContainText(`${name}. ${words}`)
    await expect(page.locator('.mark-name', { hasText: name }).filter({ visible: true })).toHaveCount(1)
  }
  const { sample } = await casePicturesOf({ state, after: null, left: [] }, library)
  expect(wrongNeedles(sample).length).toBe(26)
  await expect(page.locator('.case-shows')).toContainText(countWords(sample))
  await expect(page.locator('.case-shows')).toContainText('on 26 of 200 needles')
}

const freshPage = async (
  browser: Browser,
  baseURL: string | undefined,
): Promise<{ page: Page; wrongs: string[] }> => {
  const context = await browser.newContext(baseURL === undefined ? {} : { baseURL })
  const page = await context.newPage()
  return { page, wrongs: watch(page, baseURL ?? '') }
}

/** Holds the page's scripts back until the function that this gives is called. */
const holdScripts = async (page: Page): Promise<() => void> => {
  let letThrough: () => void = () => undefined
  const held = new Promise<void>((done) => (letThrough = done))
  await page.route('**/_astro/*.js', async (route) => {
    await held
    await route.continue()
  })
  return letThrough
}

freshTest(
  'what is wrong is read before the scripts that draw it are there, and nothing moves when they are',
  async ({ page }) => {
    await watchShifts(page)
    const letThrough = await holdScripts(page)
    const text = caseText('Your machine', 'Bring it on Friday.').slice(0, -3)
    await page.goto(`./case/#${text}`, { waitUntil: 'domcontentloaded' })
    for (const { name, words } of wrongParts(state.faults))
      await expect(page.locator('.case-parts')).toContainText(`${name}. ${words}`)
    await expect(page.locator('.case-title')).toHaveText('Your machine')
    await expect(page.locator('.case-message')).toContainText('Bring it on Friday.')
    await expect(page.locator('.case-notice')).toContainText('cut on its way')
    await expect(page.locator('.case-machine')).toBeHidden()
    await expect(page.locator('.case-scripts')).toBeHidden()
    letThrough()
    await expect(page.locator('.case[data-live] .case-machine')).toBeVisible()
    await expect(page.locator('.mark-name').filter({ visible: true })).toHaveCount(2)
    expect(await shiftOf(page)).toBeLessThan(0.02)
  },
)

freshTest('what is typed before the scripts are there is kept, and goes into the link', async ({ page }) => {
  const letThrough = await holdScripts(page)
  await page.goto(`./case/?make#${caseText('Your machine', 'Bring it on Friday.')}`, {
    waitUntil: 'domcontentloaded',
  })
  await expect(page.getByLabel('Note')).toHaveValue('Bring it on Friday.')
  await page.getByLabel('Title').fill('The blue machine')
  letThrough()
  await expect(page.locator('.case[data-live] h1')).toHaveText('The blue machine')
  await expect(page.getByLabel('Title')).toHaveValue('The blue machine')
  await expect(page).toHaveURL(/title=The\+blue\+machine/)
  expect(readCase(new URL(page.url()).hash, library).state.note).toBe('Bring it on Friday.')
})

freshTest(
  'a case is made from a state, and its link shows a stranger all of it',
  async ({ page, browser, baseURL, context }) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write'])
    await openCase(page, twoFaults, '?make')
    await expect(page.locator('.case-notice')).toBeHidden()
    await page.getByLabel('Title').fill('Mrs Bell, grey machine')
    await page.getByLabel('Note', { exact: true }).fill('Two things.\nFriday is fine.')
    await expect(page.locator('.case-sheet h1')).toHaveText('Mrs Bell, grey machine')
    await expect(page.locator('.note-count')).toHaveText('27 of 280 characters')
    await expectTwoFaults(page)
    const code = await scanned(page.locator('.case-code svg'))
    await page.getByRole('button', { name: 'Copy link' }).click()
    await expect(page.locator('.case-said')).toContainText('The link is copied.')
    await expect(page.locator('.case-said')).toContainText('It works on this device only')
    await expect(page.locator('.case-code p')).toContainText('is served on this device only')
    const link = await page.evaluate(() => navigator.clipboard.readText())
    expect(link).not.toContain('?')
    expect(code).toBe(link)

    const { page: other, wrongs } = await freshPage(browser, baseURL)
    await other.goto(link)
    await expect(other.getByRole('heading', { level: 1 })).toHaveText('Mrs Bell, grey machine')
    await expect(other.locator('.case-note')).toHaveText('Two things.\nFriday is fine.')
    await expect(other.locator('.case-notice')).toBeHidden()
    await expect(other.locator('.case-form')).toBeHidden()
    await expectTwoFaults(other)
    await other.getByRole('link', { name: 'Change this case' }).click()
    await expect(other.getByLabel('Title')).toHaveValue('Mrs Bell, grey machine')
    expect(wrongs).toEqual([])
    await other.context().close()
  },
)

test('the address follows the form and can be opened again', async ({ page }) => {
  await openCase(page, twoFaults, '?make')
  await page.getByLabel('Title').fill('Kept')
  await expect.poll(() => page.url()).toContain('?make#title=Kept&')
  await page.reload()
  await expect(page.getByLabel('Title')).toHaveValue('Kept')
  const { state: again } = readCase(new URL(page.url()).hash, library)
  expect(again.faults.map(faultId)).toEqual(state.faults.map(faultId))
})

test('another link opened in the same window is another case, while one is made too', async ({ page }) => {
  for (const query of ['', '?make']) {
    await openCase(page, caseText('First', ''), query)
    await page.goto(`./case/${query}#${goldenCases[1]?.text ?? ''}`)
    await expect(page.locator('.case-title')).toHaveText('Mrs Bell, grey machine')
    await expect(page.locator('.case-parts li')).toHaveCount(1)
    if (query !== '') await expect(page.getByLabel('Title')).toHaveValue('Mrs Bell, grey machine')
  }
})

test('the ways out lead to the live machine and back to the workbench, in the same state', async ({
  page,
}) => {
  await openCase(page, caseText('', ''), '?make')
  const hashOf = (name: string): Promise<string> =>
    page
      .getByRole('link', { name })
      .evaluate((link: HTMLAnchorElement) => `${new URL(link.href).pathname} ${link.hash}`)
  expect(await hashOf('Back to the workbench')).toMatch(/\/workbench\/ #at=R8&break=/)
  await page.getByRole('link', { name: 'See it move' }).click()
  await expect(page.locator('.machine[data-live] .chip')).toHaveCount(2)
})

test('a title and a note come back with a case that is made again, and are in no other address', async ({
  page,
}) => {
  await openCase(page, caseText('Mrs Bell', 'Bring it on Friday.'), '?make')
  await page.getByRole('link', { name: 'Back to the workbench' }).click()
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  expect(page.url()).not.toContain('Bell')
  await page.reload()
  await page.locator('.machine[data-live] .make-case').click()
  await expect(page.getByLabel('Title')).toHaveValue('Mrs Bell')
  await expect(page.getByLabel('Note')).toHaveValue('Bring it on Friday.')
  await expect(page.locator('.case-title')).toHaveText('Mrs Bell')
  expect(page.url()).toContain('?make#title=Mrs+Bell&')
})

test('what is broken is shown close to, in three dimensions, in the case’s own place', async ({ page }) => {
  const scripts = watchScripts(page)
  await openCase(page, 'title=Your+machine&break=needle.L41.gone&end=1')
  const figure = page.locator('.case-broken')
  await expect(figure.locator('svg:visible image')).toHaveAttribute('href', /needle-gone\.svg$/)
  await expect(figure.locator('figcaption')).toContainText('An example is drawn: Needle R12 has no butt.')
  await page.waitForLoadState('networkidle')
  expect((await scripts()).bytes).toBeLessThanOrEqual(70_000)
  await page.mouse.move(40, 40)
  await expect(figure.locator('svg:visible .scene-machine path').first()).toBeAttached()
  await expect(figure.locator('svg:visible .scene-label[data-lit="broken"]')).toContainText('needle L41')
  await expect(figure.locator('figcaption')).toContainText('It is drawn at R8, which has the same strip.')
  await expect(page.locator('.case-whole')).toBeHidden()
  await expect(page.locator('.case-machine')).toBeHidden()
  await figure.getByRole('link', { name: 'Turn it, at R8' }).click()
  await expect(page.locator('.link-note')).toContainText('Broken here: Needle R8 has no butt')
})

test('a sound machine is shown whole, and of several faults the first close to and all on the whole', async ({
  page,
}) => {
  await openCase(page, 'title=Your+machine&end=1')
  await expect(page.locator('.case-whole svg:visible image')).toBeVisible()
  await expect(page.locator('.case-broken')).toBeHidden()
  await expect(page.locator('.case-machine')).toBeHidden()
  await openCase(page, twoFaults)
  await expect(page.locator('.case-whole')).toBeHidden()
  await expect(page.locator('.case-broken figcaption')).toContainText('Number 1: ')
  await expect(page.locator('.mark-name').filter({ visible: true })).toHaveCount(2)
})

test('needles as few as one make a fabric no taller than many', async ({ page }) => {
  const heights: number[] = []
  for (const needles of ['R3-R3', 'R1-R8', 'L100-R100']) {
    await openCase(page, `needles=${needles}&break=strip.3.seized&end=1`)
    await expect(page.locator('.case-fabric-knitted svg:visible .yarn').first()).toBeAttached()
    heights.push(await page.locator('.case-cloths').evaluate(({ clientHeight }) => clientHeight))
  }
  expect(Math.max(...heights) - Math.min(...heights)).toBeLessThan(150)
})

freshTest('sharing is offered only where the browser can', async ({ page }) => {
  await page.addInitScript(() => {
    Reflect.deleteProperty(Navigator.prototype, 'share')
  })
  await openCase(page, twoFaults, '?make')
  await expect(page.getByRole('button', { name: 'Share' })).toBeHidden()
  await page.addInitScript(() => {
    const share = (data: unknown): Promise<void> => {
      Object.assign(window, { shared: data })
      return Promise.resolve()
    }
    Object.defineProperty(Navigator.prototype, 'share', { value: share, configurable: true })
  })
  await openCase(page, caseText('Mrs Bell', 'Hello'), '?make')
  await page.getByRole('button', { name: 'Share' }).click()
  const shared = await page.evaluate((): unknown => Reflect.get(window, 'shared'))
  const url = `${new URL(page.url()).origin}${new URL(page.url()).pathname}#${caseText('Mrs Bell', 'Hello')}`
  expect(shared).toEqual({ title: 'Mrs Bell', url })
})

test('the QR code is saved as a picture of its own', async ({ page }) => {
  await openCase(page, twoFaults, '?make')
  const waiting = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save QR as SVG' }).click()
  const file = await waiting
  expect(file.suggestedFilename()).toBe('case-qr.svg')
  const chunks: Buffer[] = []
  for await (const chunk of await file.createReadStream()) chunks.push(Buffer.from(chunk as Uint8Array))
  expect(Buffer.concat(chunks).toString()).toMatch(/^<svg [^>]*viewBox="0 0 \d+ \d+"[^]*<path /)
})

freshTest(
  'the code leads to the network that the site is served to, and is left out where the link is too long',
  async ({ page }) => {
    const network = 'http://192.168.1.5:4321'
    await page.addInitScript((address) => {
      addEventListener('DOMContentLoaded', () => {
        document.documentElement.dataset['networkSite'] = `${address}/`
      })
    }, network)
    await openCase(page, caseText('', 'word '.repeat(56)))
    await expect(page.locator('.case-code p')).toContainText('The link is long')
    expect(await scanned(page.locator('.case-code svg'))).toBe(
      page.url().replace(new URL(page.url()).origin, network),
    )
    await openCase(page, `card=x.${'A5zQ'.repeat(200)}&note=${'%F0%9F%A7%B6'.repeat(280)}&end=1`)
    await expect(page.locator('.case-code p')).toContainText('too long for a QR code')
    await expect(page.locator('.case-code svg')).toBeHidden()
  },
)

test('a text that is too long is said to be, while it is typed', async ({ page }) => {
  await openCase(page, twoFaults, '?make')
  await page.getByLabel('Note', { exact: true }).fill('x'.repeat(5000))
  await expect(page.locator('.note-count')).toHaveText(
    '5000 of 280 characters: the last 4720 do not go with the link',
  )
  await expect(page.locator('.case-note')).toHaveText('x'.repeat(280))
  await page.getByLabel('Title').fill('🧶'.repeat(81))
  await expect(page.locator('.title-count')).toContainText('the last one does not go')
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
})

for (const hostile of [
  '<img src=x onerror="window.hit=1">',
  '"><script>window.hit=1</script>',
  'javascript:window.hit=1',
  '\u202eturned\u202c and \u200fmarked',
  'x'.repeat(5000),
  '100% of 5%',
])
  test(`${JSON.stringify(hostile.slice(0, 40))} as title and note is text and nothing else`, async ({
    page,
  }) => {
    const words = encodeURIComponent(hostile).replaceAll('%25', '%')
    await openCase(page, `title=${words}&note=${words}&${twoFaults}&end=1`)
    const shown = readCase(`title=${words}&note=${words}&end=1`, library)
    await expect(page.locator('.case-title')).toHaveText(shown.title)
    expect(await page.locator('.case-note').textContent()).toBe(shown.state.note)
    expect(await page.title()).toBe(`${shown.title} · Every Eighth Needle`)
    expect(await page.locator('.case :is(img, script:not([type="application/json"]))').count()).toBe(0)
    for (const link of await page
      .locator('a')
      .evaluateAll((all: HTMLAnchorElement[]) => all.map(({ href }) => href)))
      expect(link).toMatch(/^http/)
    await frames(page, 6)
    expect(await page.evaluate((): unknown => Reflect.get(window, 'hit'))).toBeUndefined()
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    )
    await expectTwoFaults(page)
  })

test('a link cut anywhere shows what is left and says so in one line', async ({ page }) => {
  const text = goldenCases[2]?.text ?? ''
  await openCase(page, text)
  await expect(page.locator('.case-notice')).toBeHidden()
  for (let length = 1; length < text.length; length += 9) {
    await page.evaluate(
      (hash) => {
        const read = new Promise((done) => addEventListener('hashchange', done, { once: true }))
        location.hash = hash
        return read.then(() => undefined)
      },
      text.slice(0, length),
    )
    await expect(page.locator('.case-notice')).toContainText('This link was cut on its way')
    await expect(
      page
        .locator('.case-body > figure > svg')
        .filter({ visible: true })
        .locator(':is(.scene-machine path, image)')
        .first(),
    ).toBeVisible()
    expect(await page.locator('.case-lead').textContent()).not.toBe('')
  }
})

test('it prints on one sheet, with a code large enough', async ({ page }) => {
  await openCase(page, caseText('Mrs Bell, grey machine', 'I have looked at it. '.repeat(13)))
  for (const format of ['A4', 'Letter'] as const) {
    const pdf = await page.pdf({ format })
    expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length).toBe(1)
  }
  await page.emulateMedia({ media: 'print' })
  const box = await page.locator('.case-code svg').boundingBox()
  expect((box?.width ?? 0) / (96 / 25.4)).toBeGreaterThanOrEqual(40)
  for (const kept of ['.case-title', '.case-note', '.case-parts', '.case-shows', '.case-foot'])
    await expect(page.locator(kept)).toBeVisible()
  await expect(page.locator('.case-end')).toBeHidden()
  await page.emulateMedia({ media: null })
})

const kinds = [
  'break=strip.3.seized',
  'break=retainer.worn%3D12',
  'break=belt.timing%3D8',
  'break=card.locked&card=none',
  'wear=0.8',
  '',
]

test('it fits a phone, whatever is wrong', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 })
  for (const query of ['', '?make'])
    for (const kind of [...kinds, twoFaults]) {
      await openCase(page, `title=Your+machine&${kind}&note=${'long'.repeat(30)}&end=1`, query)
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
    }
})

for (const [query, what] of [
  ['', 'a case'],
  ['?make', 'a case being made'],
] as const)
  for (const kind of [twoFaults, 'wear=0.8', ''])
    test(`axe finds nothing on ${what}, light or dark: ${kind || 'a sound machine'}`, async ({ page }) => {
      await openCase(page, `${kind}&note=Hello&end=1`, query)
      expect(await axeFinds(page)).toEqual([])
    })

for (const width of [1280, 412])
  freshTest(`nothing jumps while a case is drawn, ${width} pixels wide`, async ({ page }) => {
    await page.setViewportSize({ width, height: 823 })
    await watchShifts(page)
    await openCase(page, caseText('Your machine', 'Hello'))
    await drawn(page)
    expect(await shiftOf(page)).toBeLessThan(0.02)
  })

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false })

  freshTest('the page says that it needs them', async ({ page }) => {
    await page.goto(`./case/#${caseText('Mrs Bell', 'Hello')}`)
    await expect(page.locator('.case-scripts')).toBeVisible()
    await expect(page.locator('button').filter({ visible: true })).toHaveCount(0)
  })
})
