import { expect, test } from 'vitest'
import { edited, elementsOf } from '@/integrations/html-edits.ts'
import { ownPolicy, sourceOf } from '@/integrations/own-policy.ts'
import { linkStyles, sharedStyles } from '@/integrations/shared-styles.ts'

const pageOf = (...styles: string[]) => {
  const html = `<head>${styles.map((css) => `<style>${css}</style>`).join('')}</head><p>a</p>`
  return { html, elements: elementsOf(html) }
}

test('styles that many pages have become one file, in the place where they were', () => {
  const many = Array.from({ length: 5 }, (_, n) => pageOf(`.own{order:${n}}`, '.all{order:9}'))
  const shared = sharedStyles([...many, pageOf('.few{order:1}'), pageOf('.few{order:1}')])
  expect([...shared.keys()]).toEqual(['.all{order:9}'])
  const [name = ''] = shared.values()
  expect(name).toMatch(/^shared\.[0-9a-f]{8}\.css$/)
  const page = many[2]!
  expect(edited(page.html, linkStyles(page, shared, '/x/_astro/'))).toBe(
    `<head><style>.own{order:2}</style><link rel="stylesheet" href="/x/_astro/${name}"></head><p>a</p>`,
  )
})

test('what a page has twice counts as one page', () => {
  const pages = Array.from({ length: 4 }, () => pageOf('.a{}', '.a{}'))
  expect(sharedStyles(pages).size).toBe(0)
})

test('a page’s policy names the texts that the page has, and no others', () => {
  const [style, script, other] = ['.a{order:1}', 'go()', 'goElsewhere()']
  const data = '{"a":1}'
  const policy = (...texts: string[]): string =>
    `default-src 'none'; script-src 'self' ${texts.map(sourceOf).join(' ')}; style-src-attr 'unsafe-inline'`
  const htmlWith = (content: string): string =>
    `<meta http-equiv="content-security-policy" content="${content}"><style>${style}</style><script>${script}</script><script type="deferred" src="/a.js"></script><script type="application/json">${data}</script>`
  const html = htmlWith(policy(other, style, script))
  expect(edited(html, ownPolicy(html, elementsOf(html)))).toBe(htmlWith(policy(style, script)))
})
