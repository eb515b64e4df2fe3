import { writeFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { crc32, deflateSync } from 'node:zlib'
import { readCardFile, rowText } from '@/link/card-text.ts'
import type { Card } from '@/mechanism/card.ts'
import {
  drawn,
  expect,
  type Locator,
  middle,
  type Page,
  settled,
  test as freshTest,
  lastingTest as test,
} from './page.ts'
import { phone } from './phone.ts'

/** Rows of the card that the address names, as text. */
const ownRows = async (page: Page): Promise<string[]> => {
  const { state } = await settled(page)
  if (state.card.kind !== 'own') throw new Error(`the reader holds a card of kind ${state.card.kind}`)
  return state.card.rows.map(rowText)
}

const openEditor = async (page: Page, state = 'card=x.AAAAAAAAAAAAAAAA'): Promise<void> => {
  await page.goto(`workbench/#${state}`)
  await expect(page.locator('.machine[data-live]')).toBeVisible()
  await page.getByRole('button', { name: 'Own card' }).click()
  await expect(page.locator('.own-which')).not.toBeEmpty()
}

const place = (page: Page, row: number, column: number): Locator =>
  page.getByRole('gridcell', { name: new RegExp(`^Row ${row}, column ${column}, `) })
const said = (page: Page): Locator => page.locator('.own-said')
const button = (page: Page, name: string): Locator =>
  page.locator('.card-editor').getByRole('button', { name, exact: true })
const blank = '.'.repeat(24)

/** A picture of 24 by so many pixels, black where a row's text has a hole, drawn by the browser. */
const pngOf = async (page: Page, rows: readonly string[]): Promise<Buffer> => {
  const address = await page.evaluate((lines) => {
    const canvas = document.createElement('canvas')
    canvas.width = 24 * 5
    canvas.height = lines.length * 5
    const pen = canvas.getContext('2d')
    if (!pen) throw new Error('no pen')
    pen.fillStyle = 'white'
    pen.fillRect(0, 0, canvas.width, canvas.height)
    pen.fillStyle = 'black'
    lines.forEach((line, y) =>
      [...line].forEach((mark, x) => mark === 'o' && pen.fillRect(5 * x, 5 * y, 5, 5)),
    )
    return canvas.toDataURL('image/png')
  }, rows)
  return Buffer.from(address.split(',')[1] ?? '', 'base64')
}

const openFile = async (page: Page, name: string, mimeType: string, buffer: Buffer): Promise<void> => {
  const chooser = page.waitForEvent('filechooser')
  await button(page, 'Open a file').click()
  await (await chooser).setFiles({ name, mimeType, buffer })
}

const saved = async (page: Page, name: string): Promise<{ name: string; content: Buffer }> => {
  const waiting = page.waitForEvent('download')
  await button(page, name).click()
  const download = await waiting
  return { name: download.suggestedFilename(), content: await readFile(await download.path()) }
}

test('the mouse punches and fills, and paints the same while it is dragged', async ({ page }) => {
  await openEditor(page)
  await place(page, 2, 5).click()
  await expect(place(page, 2, 5)).toHaveAccessibleName('Row 2, column 5, hole')
  const [from, to] = [await middle(place(page, 1, 10)), await middle(place(page, 1, 14))]
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(to.x, to.y, { steps: 2 })
  await page.mouse.up()
  expect(await ownRows(page)).toEqual(['.........ooooo..........', '....o...................', blank, blank])
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await ownRows(page)).toEqual([blank, '....o...................', blank, blank])
  await place(page, 2, 5).click()
  expect(await ownRows(page)).toEqual([blank, blank, blank, blank])
})

test('row 1 is the lowest', async ({ page }) => {
  await openEditor(page)
  const [one, two] = [await middle(place(page, 1, 1)), await middle(place(page, 2, 1))]
  expect(one.y).toBeGreaterThan(two.y)
})

test('keys alone reach every place and punch it', async ({ page }) => {
  await openEditor(page)
  await page.getByRole('button', { name: 'Own card' }).focus()
  await page.keyboard.press('Tab')
  const grid = page.getByRole('grid', { name: 'The card' })
  await expect(grid).toBeFocused()
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.press('Space')
  await expect(said(page)).toHaveText('Row 2, column 3, hole.')
  await page.keyboard.press('End')
  await page.keyboard.press('PageUp')
  await page.keyboard.press('Enter')
  await expect(said(page)).toHaveText('Row 4, column 24, hole.')
  await page.keyboard.press('Home')
  await page.keyboard.press('PageDown')
  await page.keyboard.press('Space')
  await page.keyboard.press('Space')
  await expect(said(page)).toHaveText('Row 1, column 1, no hole.')
  const active = await grid.getAttribute('aria-activedescendant')
  expect(await page.locator(`#${active ?? ''}`).getAttribute('aria-label')).toBe('Row 1, column 1, no hole')
  expect(await ownRows(page)).toEqual([blank, '..o.....................', blank, '.......................o'])
  await page.keyboard.press('Tab')
  await expect(grid).not.toBeFocused()
})

test('a card of this site becomes one’s own at the first change, and the link carries it', async ({
  page,
}) => {
  await openEditor(page, 'at=R8')
  await expect(page.locator('.own-which')).toContainText('A card of this site')
  await place(page, 1, 1).click()
  await expect(page.locator('.own-which')).toContainText('Your own card, 32 rows')
  await settled(page)
  expect(page.url()).toContain('card=x.')
  const address = page.url()
  const rows = await ownRows(page)
  await page.goto('about:blank')
  await page.goto(address)
  await expect(place(page, 1, 1)).toHaveAccessibleName('Row 1, column 1, hole')
  expect(await ownRows(page)).toEqual(rows)
})

test('without a card one can be begun', async ({ page }) => {
  await openEditor(page, 'card=none')
  await expect(page.getByRole('grid')).toBeHidden()
  await button(page, 'Begin an empty card').click()
  await page.keyboard.press('Space')
  expect(await ownRows(page)).toEqual(['o.......................', ...new Array<string>(23).fill(blank)])
})

test('rows and the whole card are changed by the tools', async ({ page }) => {
  await openEditor(page, 'card=x.gAAAQAAA')
  await button(page, 'Shift right').click()
  await button(page, 'Upside down').click()
  await button(page, 'Mirror').click()
  expect(await ownRows(page)).toEqual(['.....................o..', '......................o.'])
  await place(page, 1, 1).click()
  await button(page, 'Add row').click()
  await page.getByLabel('to row', { exact: true }).fill('2')
  await page.getByLabel('times in all').fill('3')
  await button(page, 'Repeat rows').click()
  const one = 'o....................o..'
  expect(await ownRows(page)).toEqual([one, blank, one, blank, one, blank, '......................o.'])
  await page.getByLabel('times in all').fill('500')
  await button(page, 'Repeat rows').click()
  await expect(said(page)).toContainText('A card has at most 200 rows here')
  await button(page, 'Remove rows').click()
  await button(page, 'Remove row').click()
  expect(await ownRows(page)).toHaveLength(4)
})

test('a fault in a row that is removed goes with it, and that is said', async ({ page }) => {
  await openEditor(page, 'card=x.AAAAAAAA&break=card.torn.2.5&break=strip.3.seized')
  await place(page, 2, 1).click()
  await button(page, 'Remove row').click()
  await expect(said(page)).toContainText('a fault in a later row of the last card is gone')
  await expect(page.locator('.chip')).toHaveText(/Strip 3 seized/)
})

test('pasted text is read, and each row that can’t be is named', async ({ page }) => {
  await openEditor(page)
  await button(page, 'Paste text').click()
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByRole('button', { name: 'Use this card' })).toBeDisabled()
  const row = 'xx......................'
  await dialog.getByRole('textbox').fill(`${row}\n${row.replace('xx', 'xq')}\n<img src=x>\n${row}`)
  await expect(dialog.getByRole('status')).toHaveText('2 rows read.')
  await expect(dialog.getByRole('listitem')).toHaveText([
    'Row 2 is left out: in column 2 it has “q”, which means neither a hole nor none.',
    /^Row 3 is left out: in column 1 it has “<”/,
  ])
  await dialog.getByRole('button', { name: 'Use this card' }).click()
  await expect(dialog).toBeHidden()
  await expect(said(page)).toContainText('Row 2 is left out')
  expect(await ownRows(page)).toEqual(new Array(2).fill(row.replaceAll('x', 'o')))
})

test('a picture shows the card that it gives before it is used', async ({ page }) => {
  await openEditor(page)
  const rows = ['o.o.....................', '.o.o....................', '..........oooo..........']
  await openFile(page, 'rows.png', 'image/png', await pngOf(page, rows))
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByRole('status')).toHaveText('This gives 3 rows with 8 holes.')
  await dialog.getByLabel('Threshold').fill('0')
  await expect(dialog.getByRole('status')).toHaveText('This gives 3 rows with 0 holes.')
  await dialog.getByLabel('Threshold').fill('100')
  await dialog.getByLabel('where it is light').check()
  await expect(dialog.getByRole('status')).toHaveText('This gives 3 rows with 64 holes.')
  await dialog.getByLabel('where the picture is dark').check()
  await dialog.getByRole('button', { name: 'Use this card' }).click()
  expect(await ownRows(page)).toEqual(rows.reverse())
})

/** A photograph of a card with a margin, lying askew on a table, and the corners of its grid in it. */
const photographOf = async (
  page: Page,
  rows: readonly string[],
): Promise<{ picture: Buffer; corners: readonly (readonly [number, number])[] }> => {
  const address = await page.evaluate((lines) => {
    const canvas = document.createElement('canvas')
    canvas.width = 480
    canvas.height = 360
    const pen = canvas.getContext('2d')
    if (!pen) throw new Error('no pen')
    pen.fillStyle = '#776655'
    pen.fillRect(0, 0, 480, 360)
    pen.setTransform(14, 1.5, 2, 16, 60, 50)
    pen.fillStyle = '#eee'
    pen.fillRect(-2, -2, 28, lines.length + 4)
    pen.fillStyle = '#222'
    lines.forEach((line, y) =>
      [...line].forEach((mark, x) => {
        if (mark !== 'o') return
        pen.beginPath()
        pen.arc(x + 0.5, y + 0.5, 0.42, 0, 2 * Math.PI)
        pen.fill()
      }),
    )
    return canvas.toDataURL('image/png')
  }, rows)
  const corner = (x: number, y: number): readonly [number, number] => [
    60 + 14 * x + 2 * y,
    50 + 1.5 * x + 16 * y,
  ]
  const high = rows.length
  return {
    picture: Buffer.from(address.split(',')[1] ?? '', 'base64'),
    corners: [corner(0, 0), corner(24, 0), corner(24, high), corner(0, high)],
  }
}

test('a photograph with a margin gives its card once its corners are dragged, pressed or moved by keys', async ({
  page,
}) => {
  await openEditor(page)
  const rows = Array.from({ length: 12 }, (_, n) =>
    (n % 3 === 0 ? 'oo..' : n % 3 === 1 ? '.o.o' : '..oo').repeat(6),
  )
  const { picture, corners } = await photographOf(page, rows)
  await openFile(page, 'photo.png', 'image/png', picture)
  const dialog = page.getByRole('dialog')
  const use = dialog.getByRole('button', { name: 'Use this card' })
  const preview = dialog.locator('.own-preview path')
  const whole = await preview.getAttribute('d')
  const box = await dialog.locator('.own-photo').boundingBox()
  if (!box) throw new Error('no picture')
  await page.mouse.click(
    box.x + (corners[1]![0] / 480) * box.width,
    box.y + (corners[1]![1] / 360) * box.height,
  )
  for (const [n, name] of [
    [0, 'upper left'],
    [2, 'lower right'],
  ] as const) {
    const [x, y] = corners[n]!
    const from = await middle(dialog.getByRole('button', { name: `Corner ${name}` }))
    await page.mouse.move(from.x + 3, from.y - 2)
    await page.mouse.down()
    await page.mouse.move(box.x + (x / 480) * box.width + 3, box.y + (y / 360) * box.height - 2, { steps: 3 })
    await page.mouse.up()
  }
  const last = dialog.getByRole('button', { name: 'Corner lower left' })
  await last.focus()
  for (let n = 0; n < 7; n++) await page.keyboard.press('Shift+ArrowRight')
  for (let n = 0; n < 13; n++) await page.keyboard.press('Shift+ArrowUp')
  await page.keyboard.press('ArrowUp')
  await expect(last).toHaveAccessibleName('Corner lower left: 18 % across, 67 % down')
  expect(await preview.getAttribute('d')).not.toBe(whole)
  await dialog.getByLabel('Rows').fill('12')
  await expect(dialog.getByRole('status')).toHaveText('This gives 12 rows with 144 holes.')
  await use.click()
  expect(await ownRows(page)).toEqual(rows.toReversed())
})

test('corners out of order give no card and a sentence, until the whole picture is taken again', async ({
  page,
}) => {
  await openEditor(page)
  const rows = ['o.o.....................', '.o.o....................']
  await openFile(page, 'rows.png', 'image/png', await pngOf(page, rows))
  const dialog = page.getByRole('dialog')
  await dialog.getByRole('button', { name: 'Corner upper left' }).focus()
  for (let n = 0; n < 41; n++) await page.keyboard.press('Shift+ArrowDown')
  await expect(dialog.getByRole('status')).toContainText('The corners are out of order')
  await expect(dialog.getByRole('button', { name: 'Use this card' })).toBeDisabled()
  await dialog.getByRole('button', { name: 'Whole picture' }).click()
  await expect(dialog.getByRole('status')).toHaveText('This gives 2 rows with 4 holes.')
})

test('a file that is no card is refused in one sentence', async ({ page }) => {
  await openEditor(page)
  await openFile(page, 'song.bin', 'application/octet-stream', Buffer.from([0, 1, 2, 3]))
  await expect(said(page)).toHaveText('“song.bin” is neither a text nor a picture.')
  await openFile(page, 'broken.png', 'image/png', Buffer.from('not a picture'))
  await expect(said(page)).toHaveText('“broken.png” can’t be read as a picture by this browser.')
})

test('a card saved as text is read again, by this page and by the site', async ({ page }) => {
  await openEditor(page, 'card=x.gAAAQAAA')
  await page.getByLabel('Name').fill('Zwei Ärmel')
  const { name, content } = await saved(page, 'Save as text')
  expect(name).toBe('zwei-ärmel.txt')
  const file = readCardFile(content.toString())
  expect(file.title).toBe('Zwei Ärmel')
  expect(file.rows).toEqual([0x800000, 0x400000] satisfies Card)
  await button(page, 'New empty card').click()
  expect(await ownRows(page)).toHaveLength(24)
  await page.getByLabel('Name').fill('')
  await openFile(page, name, 'text/plain', content)
  await page.getByRole('dialog').getByRole('button', { name: 'Use this card' }).click()
  await expect(page.getByLabel('Name')).toHaveValue('Zwei Ärmel')
  expect(await ownRows(page)).toEqual(file.rows.map(rowText))
})

/** A blank picture of so many pixels a side, in a few kB. */
const bomb = (side: number): Buffer => {
  const chunk = (kind: string, content: Buffer): Buffer => {
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
    const body = Buffer.concat([Buffer.from(kind), content])
    length.writeUInt32BE(content.length)
    sum.writeUInt32BE(crc32(body))
    return Buffer.concat([length, body, sum])
  }
  const size = Buffer.alloc(13)
  size.writeUInt32BE(side, 0)
  size.writeUInt32BE(side, 4)
  size[8] = 1
  const rows = Buffer.alloc(side * (1 + Math.ceil(side / 8)))
  const start = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  const image = deflateSync(rows, { level: 9 })
  return Buffer.concat([start, chunk('IHDR', size), chunk('IDAT', image), chunk('IEND', Buffer.alloc(0))])
}

/** A drawing of a few hundred bytes whose parts repeat each other a thousand million times. */
const drawingBomb = `<svg xmlns="http://www.w3.org/2000/svg"><path id="l0" d="M0,0h9v9z"/>${Array.from(
  { length: 9 },
  (_, n) => `<g id="l${n + 1}">${`<use href="#l${n}"/>`.repeat(10)}</g>`,
).join('')}</svg>`

freshTest(
  'a picture that would fill the memory, or a file of 50 MB, is refused in words',
  async ({ page }, info) => {
    await openEditor(page)
    const small = bomb(9_000)
    expect(small.length).toBeLessThan(20_000)
    await openFile(page, 'bomb.png', 'image/png', small)
    await expect(said(page)).toHaveText(
      '“bomb.png” is too large a picture, so it was not opened. Make it smaller and try again.',
    )
    await openFile(page, 'bomb.svg', 'image/svg+xml', Buffer.from(drawingBomb))
    await expect(said(page)).toContainText('“bomb.svg” is a drawing made of shapes')
    for (const [name, words] of [
      ['huge.png', '“huge.png” is too large a picture'],
      ['huge.txt', '“huge.txt” is too large for a card’s text'],
    ] as const) {
      const path = info.outputPath(name)
      writeFileSync(path, Buffer.alloc(50_000_000, 'o'))
      const chooser = page.waitForEvent('filechooser')
      await button(page, 'Open a file').click()
      await (await chooser).setFiles(path)
      await expect(said(page)).toContainText(words)
    }
    await expect(page.locator('.own-picture')).toBeHidden()
  },
)

test('a card saved as a picture is the same card when it is opened', async ({ page }) => {
  await openEditor(page, 'card=x.gAAAQAAAEIAB')
  const rows = await ownRows(page)
  const { name, content } = await saved(page, 'Save as picture')
  await button(page, 'New empty card').click()
  await openFile(page, name, 'image/png', content)
  await page.getByRole('dialog').getByRole('button', { name: 'Use this card' }).click()
  expect(await ownRows(page)).toEqual(rows)
})

test('the sheet to punch is shown page by page and saved', async ({ page }) => {
  await openEditor(page, `card=x.${'gAAA'.repeat(60)}`)
  await button(page, 'Sheet to punch').click()
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByRole('status')).toHaveText('Page 1 of 2.')
  await dialog.getByRole('button', { name: 'Page on' }).click()
  await expect(dialog.getByRole('status')).toHaveText('Page 2 of 2.')
  await expect(dialog.getByRole('img', { name: 'Page 2 of the sheet to punch' })).toBeVisible()
  const svg = await saved(page, 'Save this page as SVG')
  expect(svg.name).toBe('own-card-2.svg')
  expect(svg.content.toString()).toContain('width="210mm" height="297mm"')
  const pdf = await saved(page, 'Save as PDF')
  expect(pdf.name).toBe('own-card.pdf')
  expect(pdf.content.subarray(0, 5).toString()).toBe('%PDF-')
  await dialog.getByLabel('From column to column').fill('12')
  await expect(dialog.getByRole('status')).toHaveText(
    'The distance from column to column must be 4 to 10 mm.',
  )
  await expect(dialog.getByRole('button', { name: 'Save as PDF' })).toBeDisabled()
  await dialog.getByLabel('From column to column').fill('5')
  await dialog.getByRole('button', { name: 'Close' }).click()
  await button(page, 'Sheet to punch').click()
  await expect(dialog.getByLabel('From column to column')).toHaveValue('5')
})

test('one hole in the longest card is drawn at once', async ({ page }) => {
  await openEditor(page, `card=x.${'gAAA'.repeat(200)}`)
  await expect(page.getByRole('gridcell')).toHaveCount(4800)
  await page.getByRole('grid').focus()
  const changed = await page.evaluate(() => {
    let count = 0
    const rows = document.querySelector('.own-rows')
    if (!rows) throw new Error('no rows')
    new MutationObserver((changes) => {
      const cells = changes.filter(({ target }) => target instanceof Element && target.matches('.own-cell'))
      count += new Set(cells.map(({ target }) => target)).size
      document.body.dataset.changed = String(count)
    }).observe(rows, { subtree: true, attributes: true, childList: true })
    return count
  })
  expect(changed).toBe(0)
  await page.keyboard.press('Space')
  await expect(page.locator('body')).toHaveAttribute('data-changed', '1')
})

test.describe('on a phone', () => {
  test.use(phone)

  freshTest('a tap chooses a row, and large keys punch and fill it', async ({ page }) => {
    await openEditor(page)
    await place(page, 3, 4).tap()
    await expect(page.locator('.own-pad-row')).toHaveText('Row 3 of 4')
    const keys = page.locator('.own-key')
    await expect(keys).toHaveCount(24)
    for (const key of [keys.first(), keys.nth(7), keys.nth(8), keys.last()]) {
      const box = await key.boundingBox()
      expect(box?.width).toBeGreaterThanOrEqual(44)
      expect(box?.height).toBeGreaterThanOrEqual(44)
      expect(box?.x).toBeGreaterThanOrEqual(0)
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(360)
    }
    const key = page.getByRole('button', { name: 'Row 3, column 17', exact: true })
    await key.tap()
    await expect(key).toHaveAttribute('aria-pressed', 'true')
    await button(page, 'Row above').tap()
    await page.getByRole('button', { name: 'Row 4, column 8', exact: true }).tap()
    await page.getByRole('button', { name: 'Row 4, column 1', exact: true }).tap()
    await page.getByRole('button', { name: 'Row 4, column 1', exact: true }).tap()
    expect(await ownRows(page)).toEqual([
      blank,
      blank,
      '................o.......',
      '.......o................',
    ])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
  })

  freshTest('a finger drags a corner of a picture', async ({ page }) => {
    await openEditor(page)
    await openFile(page, 'rows.png', 'image/png', await pngOf(page, new Array<string>(24).fill(blank)))
    const handle = page.getByRole('dialog').getByRole('button', { name: 'Corner upper left' })
    await expect(handle).toHaveAccessibleName('Corner upper left: 0 % across, 0 % down')
    const { x, y } = await middle(handle)
    const box = await page.locator('.own-photo').boundingBox()
    if (!box) throw new Error('no picture')
    const session = await page.context().newCDPSession(page)
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number): Promise<unknown> =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: x + share * box.width, y: y + 2 * share * box.height }],
      })
    await touch('touchStart', 0)
    await touch('touchMove', 0.1)
    await touch('touchMove', 0.25)
    await touch('touchEnd', 0.25)
    await expect(handle).toHaveAccessibleName('Corner upper left: 25 % across, 50 % down')
  })

  freshTest('a swipe at the end of the card’s grid goes on to the page', async ({ page }) => {
    await openEditor(page, `card=x.${'gAAA'.repeat(100)}`)
    const window = page.locator('.own-scroll')
    await window.evaluate((element) => {
      element.scrollTop = element.scrollHeight
    })
    await window.evaluate((element) => {
      element.scrollIntoView({ block: 'start' })
    })
    await drawn(page)
    const before = await page.evaluate(() => scrollY)
    const { x, y } = await middle(window)
    const session = await page.context().newCDPSession(page)
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', by = 0): Promise<unknown> =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y: y - by }],
      })
    await touch('touchStart')
    for (let by = 15; by <= 150; by += 15) {
      await touch('touchMove', by)
      // As a finger moves: a picture of the screen for each place.
      await drawn(page)
    }
    await touch('touchEnd')
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(before + 50)
  })
})
