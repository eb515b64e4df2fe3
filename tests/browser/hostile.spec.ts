import { expect, type Page, test } from './page.ts'

/**
 * What somebody may write where a text is wanted. The policy of the pages is put aside here: no text may come to life
 * even without it.
 */
const markup = '<img src=x onerror="hurt()"><b>b</b>'
const texts = {
  'markup that runs': `"'>${markup}<script>hurt()</script>`,
  'an address that runs, with signs that turn and hide': 'javascript:hurt()//\u202e\u2066R3\u200b\u200f',
} as const

test.use({ bypassCSP: true })

test.beforeEach(async ({ page }) => {
  await page.addInitScript(() => {
    const made: string[] = []
    Object.assign(window, { made, hurt: () => made.push('hurt') })
    window.alert = window.confirm = () => made.push('dialog') > 0
    const look = (node: Node): void => {
      if (!(node instanceof Element)) return
      for (const element of [node, ...node.querySelectorAll('*')])
        if (/^(img|script|b|iframe|object|svg:script)$/i.test(element.nodeName)) made.push(element.outerHTML)
    }
    addEventListener('DOMContentLoaded', () => {
      new MutationObserver((changes) => {
        for (const { addedNodes } of changes) addedNodes.forEach(look)
      }).observe(document.body, { childList: true, subtree: true })
    })
  })
})

/** Nothing was made of a text, nothing ran, nothing would run when it is pressed, and nothing is pushed out of the page. */
const expectUnhurt = async (page: Page, where: string): Promise<void> => {
  const found = await page.evaluate(() => {
    const alive = [...document.querySelectorAll('*')].filter((element) =>
      [...element.attributes].some(
        ({ name, value }) =>
          name.startsWith('on') ||
          (/^(href|src|action|xlink:href)$/.test(name) && /^\s*javascript:/i.test(value)),
      ),
    )
    return [
      ...(Reflect.get(window, 'made') as string[]),
      ...alive.map(({ outerHTML }) => outerHTML.slice(0, 200)),
    ]
  })
  expect(found, where).toEqual([])
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
    where,
  ).toBeLessThanOrEqual(0)
}

const machine = '.machine[data-live]'

/** Addresses with a place for a stranger's text, `*`; what shows that the page works; and where the text is seen. */
const links = [
  ['./?*=*#at=R20&note=*&card=*&break=*&*=1', machine, '.link-note'],
  ['./workbench/?beside=*#card=*&note=*&needles=*', machine, '.link-note'],
  ['./chapters/the-hold/?step=*#note=*&seed=*', machine, undefined],
  ['./chapters/the-hold/#*', machine, undefined],
  ['./class/the-hold/?step=*&quiz=*&class=*&shown=*#note=*&wear=*', machine, undefined],
  ['./class/the-hold/speaker/?class=*&since=*&step=*', machine, undefined],
  ['./find/#pass=*&marks=*&card=*&check=*&found=*&practice=*', '.answer h3', undefined],
  ['./case/#title=*&note=*&card=*&break=*&end=1', '.case[data-live]', '.case-title'],
  ['./case/?make=*#title=*&note=*&end=1', '.case[data-live]', '.case-note'],
  ['./search/?q=*', '.count:not(:empty)', undefined],
  ['./paper/worksheets/?seed=*', '.worksheets .tasks li', undefined],
  ['./paper/worksheets/?seed=<b>b</b>', '.worksheet-name:text-is("<b>b</b>")', undefined],
  ['./faults/strip-seized/?*#break=*', machine, undefined],
  ['./parts/?of=*#view=*', '.parts-bench[data-live]', undefined],
  ['./measure/#own=*&first=*&speed=*&note=*', '.measure[data-live]', undefined],
  ['./job/?*=*#*', '.jobs[data-live]', undefined],
  [
    './embed/scene/?theme=*&view=*&layers=*&subject=*&also=*&hand=*#note=*&own=*&view=*&break=*',
    '.embed[data-live]',
    '.link-note',
  ],
  ['./offline/?*#*', '.keeping-state:not(:empty)', undefined],
] as const

for (const [name, text] of Object.entries(texts))
  test(`${name}, in every part of a link, is text`, async ({ page }) => {
    for (const [address, alive, shown] of links) {
      await page.goto('about:blank')
      await page.goto(address.replaceAll('*', encodeURIComponent(text)))
      await expect(page.locator(alive).first(), address).toBeVisible()
      const seen = page.locator(shown ?? alive).filter({ hasText: shown ? text.slice(0, 17) : '' })
      await expect(seen.first(), address).toBeVisible()
      await expectUnhurt(page, address)
    }
  })

/** Pages with fields for text; what is pressed to have the fields that come only then. */
const fields = [
  ['./#v=1', ['.break', '.breaker-list button[data-kind="strip.slow"]'], machine],
  ['./workbench/?beside=card', [], machine],
  ['./workbench/?beside=fabric', [], machine],
  ['./find/', ['.starts summary'], '.answer h3'],
  ['./find/#practice=7', [], '.practice'],
  ['./case/?make#break=strip.3.seized', [], '.case[data-live]'],
  ['./search/?q=pawl', [], '.results a'],
  ['./paper/worksheets/?seed=7', [], '.worksheet-name:text-is("7")'],
] as const

/** Writes a text into every field of the page, seen or not, and sends its form off. Gives how many fields there are. */
const fillAll = (page: Page, text: string): Promise<number> =>
  page.evaluate((words) => {
    const asText = ['text', 'search', 'number', 'email', 'url', 'tel', 'password']
    const all = [...document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>('input, textarea')]
    const wanted = all.filter((field) => field instanceof HTMLTextAreaElement || asText.includes(field.type))
    for (const field of wanted) {
      // Where only a number fits, one that fits nothing.
      field.value = field.type === 'number' ? '-1e300' : words
      for (const kind of ['input', 'change']) field.dispatchEvent(new Event(kind, { bubbles: true }))
      field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }))
      field.form?.requestSubmit()
    }
    return wanted.length
  }, text)

test('whatever is written into every field of every page is text, or is refused in words', async ({
  page,
}) => {
  let count = 0
  for (const [address, presses, alive] of fields) {
    await page.goto(address)
    await expect(page.locator(alive).first(), address).toBeVisible()
    for (const press of presses) await page.locator(press).first().click()
    for (const text of Object.values(texts)) {
      const filled = await fillAll(page, text)
      expect(filled, address).toBeGreaterThan(0)
      count += filled
      await expectUnhurt(page, address)
    }
  }
  expect(count / Object.keys(texts).length).toBeGreaterThan(20)
})

/** A drawing that carries a script, a page and a picture from elsewhere. */
const alive = `<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" onload="parent.hurt()">
  <script>parent.hurt()</script><image href="https://example.org/x.png" width="9" height="9"/>
  <foreignObject width="9" height="9"><img xmlns="http://www.w3.org/1999/xhtml" src="x" onerror="parent.hurt()"/>
  </foreignObject></svg>`

test('a file’s name, its title, its text and a drawing with a script in it stay what they are', async ({
  page,
}) => {
  await page.goto('./workbench/?beside=card#card=x.AAAAAAAA')
  await expect(page.locator(machine)).toBeVisible()
  const editor = page.locator('.card-editor')
  const open = async (name: string, mimeType: string, content: string): Promise<void> => {
    const chooser = page.waitForEvent('filechooser')
    await editor.getByRole('button', { name: 'Open a file' }).click()
    await (await chooser).setFiles({ name, mimeType, buffer: Buffer.from(content) })
  }
  const dialog = page.getByRole('dialog')
  // Its script comes after the machine's.
  await expect(editor.locator('.own-which')).not.toBeEmpty()

  await open(`${markup}.bin`, 'application/octet-stream', '\u0000')
  await expect(editor.locator('.own-said')).toContainText('“<img src=x onerror=')
  await open('card.txt', 'text/plain', `title: ${markup}\nabout: ${markup}\n\n${'o'.repeat(24)}\n${markup}\n`)
  await expect(dialog.getByRole('listitem').first()).toContainText('“<”')
  await dialog.getByRole('button', { name: 'Use this card' }).click()
  await expect(editor.getByLabel('Name')).toHaveValue(markup)
  await editor.getByRole('button', { name: 'Sheet to punch' }).click()
  await expect(dialog.getByRole('status')).toHaveText('Page 1 of 1.')
  await dialog.getByRole('button', { name: 'Close' }).click()
  const download = page.waitForEvent('download')
  await editor.getByRole('button', { name: 'Save as text' }).click()
  expect((await download).suggestedFilename()).toMatch(/^[a-z0-9-]+\.txt$/)
  await open('alive.svg', 'image/svg+xml', alive)
  await expect(editor.locator('.own-said')).toContainText('“alive.svg” is a drawing made of shapes')
  await open('alive.png', 'image/png', alive)
  await expect(editor.locator('.own-said')).toHaveText(
    '“alive.png” can’t be read as a picture by this browser.',
  )
  await expectUnhurt(page, 'files')
})

test('what another window says to a class is taken for nothing where it is no state of a class', async ({
  page,
}) => {
  await page.goto('./class/the-hold/?class=abcd12')
  await expect(page.locator(machine)).toBeVisible()
  const heading = await page.getByRole('heading', { level: 1 }).textContent()
  await page.evaluate(async (words) => {
    const channel = new BroadcastChannel('class-abcd12')
    const state = {
      chapter: words,
      step: words,
      link: `note=${words}`,
      parts: -1,
      pointer: { x: words, y: 1 },
    }
    for (const said of [
      words,
      null,
      [],
      { kind: words },
      { kind: 'state', state, times: words },
      { kind: 'state' },
    ])
      channel.postMessage(said)
    await new Promise((done) => setTimeout(done, 300))
    channel.close()
  }, markup)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(heading ?? '')
  await page.keyboard.press('ArrowRight')
  await expect(page).toHaveURL(/step=/)
  await expectUnhurt(page, 'channel')
})
