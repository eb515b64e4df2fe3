import { expect, shiftOf, test, watchShifts } from './page.ts'

const pages = [
  './',
  './chapters/the-hold/',
  './workbench/',
  './faults/strip-seized/',
  './find/',
  './case/?make#break=strip.3.seized',
  './parts/',
  './measure/',
  './glossary/',
]

test.describe('the first sight of a page', () => {
  test.use({ motion: 'no-preference' })

  test('nothing but its styles is waited for: scripts are fetched after it is drawn', async ({ page }) => {
    const asked: string[] = []
    page.on('request', (request) => asked.push(request.resourceType()))
    await page.route('**/*.css', async (route) => {
      // A slow network: scripts that did not wait would be asked for meanwhile.
      await new Promise((done) => setTimeout(done, 150))
      asked.push('styles are here')
      await route.continue()
    })
    for (const address of pages) {
      // So that the page before asks for nothing any more.
      await page.goto('about:blank')
      await page.waitForLoadState('networkidle')
      asked.length = 0
      await page.goto(address)
      await expect(page.locator('link[rel="manifest"]')).toBeAttached()
      const before = asked.slice(0, asked.indexOf('styles are here'))
      expect([...new Set(before)], address).toEqual(['document', 'stylesheet'])
      expect(before.length, address).toBeLessThan(5)
      expect(asked).toContain('script')
    }
  })

  for (const width of [1280, 412])
    test(`it has its letters, and nothing moves when they are there, ${width} pixels wide`, async ({
      page,
    }) => {
      await page.setViewportSize({ width, height: 800 })
      await watchShifts(page)
      for (const address of pages) {
        await page.goto(address)
        await expect(page.locator('link[rel="manifest"]')).toBeAttached()
        const faces = await page.evaluate(() =>
          [...document.fonts].map(({ display, status }) => `${display} ${status}`),
        )
        expect(faces.filter((face) => face === 'auto loaded')).toHaveLength(4)
        expect(await shiftOf(page), address).toBeLessThan(0.02)
      }
    })
})
