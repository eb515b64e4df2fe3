import { momentOf, wrongNeedles } from './model.ts'
import {
  edit,
  expect,
  middle,
  open,
  part,
  picture,
  lastingTest as test,
  type Locator,
  type Page,
} from './page.ts'

/** The needles drawn in the window, each with its mark. */
const drawnNeedles = (page: Page): Promise<[name: string, mark: string][]> =>
  picture(page)
    .locator('.needle:not([display="none"])')
    .evaluateAll((needles) =>
      needles.map((needle): [string, string] => [
        (needle.getAttribute('data-part') ?? '').replace('needle.', ''),
        needle.getAttribute('data-mark') ?? '',
      ]),
    )

const isWrong = ([, mark]: [string, string]): boolean => /missed|extra|unmoved/.test(mark)

/** Where a needle's drawing begins, or that of the place where it should be. */
const place = (element: Element): [number, number] => {
  const [x = NaN, y = NaN] = (element.getAttribute('d') ?? '').match(/[\d.]+/g)?.map(Number) ?? []
  return [x, y]
}

const states = [
  'at=R20&break=strip.3.seized',
  'pass=2&at=L30&break=strip.3.seized',
  'at=R98.5&break=pin.5.low',
  'card=all-holes&pass=3&at=R60&break=rocker.7.dead&break=catch.R50.broken',
  'card=blank&at=R90&break=strip.6.over',
  'card=swallows&pass=4&at=L90&break=needle.L70.gone',
  'pass=6&at=R40.75&break=belt.timing%3D8',
  'at=R60&break=retainer.worn%3D12&speed=900&seed=7',
  'needles=L30-R30&at=R34&break=strip.1.seized',
  'at=R60',
]

for (const state of states)
  test(`the drawing marks the needles that the model gets wrong: ${state}`, async ({ page }) => {
    await open(page, state)
    const wrong = wrongNeedles(momentOf(state))
    const drawn = await drawnNeedles(page)
    const names = new Set(drawn.map(([name]) => name))
    expect(names.size).toBeGreaterThan(25)
    expect(drawn.filter(isWrong).sort()).toEqual(wrong.filter(([name]) => names.has(name)).sort())

    for (const mark of ['missed', 'extra', 'unmoved']) {
      const ticks = await picture(page).locator(`.map-ticks[data-mark="${mark}"]`).getAttribute('d')
      expect(ticks?.match(/M/g)?.length ?? 0, `${mark} on the map`).toBe(
        wrong.filter(([, other]) => other === mark).length,
      )
    }
  })

test('a missed needle shows, in dashes, where it should be', async ({ page }) => {
  await open(page, 'at=R20&break=strip.3.seized')
  const missed = await picture(page)
    .locator('.needle[data-mark="missed"]')
    .evaluateAll((all) => all.length)
  const ghosts = picture(page).locator('.ghosts')
  const shapes = (await ghosts.getAttribute('d'))?.match(/M/g) ?? []
  expect(shapes).toHaveLength(missed)
  const dashed = await ghosts.evaluate((path) => getComputedStyle(path).strokeDasharray)
  expect(dashed).not.toBe('none')

  const ghost = await ghosts.evaluate(place)
  const selected = await part(page, 'needle.L2').evaluate(place)
  expect(momentOf('at=R20').frame.pass.came[98]).toBe('selected')
  expect(ghost[1]).toBe(selected[1])
  const owners = await picture(page)
    .locator('.needle[data-mark="missed"]')
    .evaluateAll((all) => all.map((needle) => needle.getAttribute('d')?.match(/[\d.]+/)?.[0]))
  expect(owners.map(Number)).toContain(ghost[0])
})

/** Whether the amber lies under the middle of an element, or so many pixels above it. */
const isAmber = (element: Locator, above = 0): Promise<boolean> =>
  element.evaluate((element, above) => {
    const push = element.closest('svg')?.querySelector<SVGPathElement>('.push')
    const toPush = push?.getScreenCTM()?.inverse()
    if (!push || !toPush) return false
    const { left, top, width, height } = element.getBoundingClientRect()
    return push.isPointInStroke(
      new DOMPoint(left + width / 2, top + height / 2 - above).matrixTransform(toPush),
    )
  }, above)

test('amber runs from the hole to the needle, and only as far as the push comes', async ({ page }) => {
  await open(page, 'at=R8&break=strip.3.seized')
  for (const id of ['pin.8', 'rocker.8', 'strip.8', 'needle.R8'])
    expect(await isAmber(part(page, id)), id).toBe(true)
  const rest = await picture(page).locator('.butt-band .reference').boundingBox()
  const isAmberAboveButt = async (name: string): Promise<boolean> => {
    const needle = part(page, `needle.${name}`)
    return isAmber(needle, (await middle(needle)).y - (rest?.y ?? NaN) + 38)
  }
  expect(await isAmberAboveButt('R8'), 'from the catch down to the butt').toBe(true)
  expect(await isAmberAboveButt('R16')).toBe(false)
  for (const id of ['pin.10', 'strip.3', 'strip.7', 'needle.R20'])
    expect(await isAmber(part(page, id)), id).toBe(false)

  await edit(page, 'at=R3&break=strip.3.seized')
  for (const id of ['pin.3', 'rocker.3']) expect(await isAmber(part(page, id)), id).toBe(true)
  for (const id of ['strip.3', 'pin.8', 'needle.R3']) expect(await isAmber(part(page, id)), id).toBe(false)
})

test('the window follows the carriage, and the map shows where it is', async ({ page }) => {
  await open(page, 'at=R20')
  for (const name of ['L95', 'L40', 'R1', 'R95']) {
    await edit(page, `at=${name}`)
    expect((await drawnNeedles(page)).map(([drawn]) => drawn)).toContain(name)
    const [box, carriage] = await Promise.all(
      ['.map-window', '.map-carriage'].map((selector) => picture(page).locator(selector).boundingBox()),
    )
    const x = (carriage?.x ?? NaN) + (carriage?.width ?? NaN) / 2
    expect(x).toBeGreaterThan(box?.x ?? NaN)
    expect(x).toBeLessThan((box?.x ?? NaN) + (box?.width ?? NaN))
  }
})
