import { test as plain } from '@playwright/test'
import { expect, test } from './page.ts'

const addresses = [
  './',
  './chapters/the-hold/',
  './workbench/?beside=fabric#break=strip.3.seized',
  './case/#title=Your+machine&break=strip.3.seized&end=1',
  './find/',
  './class/the-hold/',
  './search/?q=strip',
]

test('every kind of page allows scripts of its own only, and nothing from elsewhere', async ({ page }) => {
  for (const address of addresses) {
    await page.goto(address)
    const policy = await page.locator('meta[http-equiv="content-security-policy"]').getAttribute('content')
    const directives = new Map(
      (policy ?? '')
        .split(';')
        .map((text) => text.trim().split(/\s+/))
        .map(([name = '', ...sources]) => [name, sources]),
    )
    expect(directives.get('default-src')).toEqual(["'none'"])
    expect(directives.get('script-src')).toContain("'self'")
    for (const [name, sources] of directives)
      for (const source of sources)
        if (name !== 'style-src-attr')
          expect(source).toMatch(
            /^(font|img)-src$/.test(name) ? /^('self'|blob:|data:)$/ : /^('none'|'self'|'sha256-[^']+')$/,
          )
  }
})

plain(
  'a script that comes into the page does not run, and nothing is fetched from elsewhere',
  async ({ page }) => {
    const refused: string[] = []
    page.on('console', (message) => {
      if (message.text().includes('Content Security Policy')) refused.push(message.text())
    })
    await page.goto('./')
    const ran = await page.evaluate(async () => {
      const script = document.createElement('script')
      script.textContent = 'document.documentElement.dataset.ran = "yes"'
      document.body.append(script)
      const image = document.createElement('p')
      image.innerHTML = '<img src="missing.png" onerror="document.documentElement.dataset.ran = \'yes\'">'
      document.body.append(image)
      const fetched = await fetch('https://example.org/').then(
        () => 'fetched',
        () => 'refused',
      )
      await new Promise((done) => setTimeout(done, 100))
      return [document.documentElement.dataset.ran ?? 'no', fetched]
    })
    expect(ran).toEqual(['no', 'refused'])
    expect(refused.length).toBeGreaterThanOrEqual(2)
  },
)
