import { describe, expect, test } from 'vitest'
import { loadDeferredScripts } from '@/site/inline-script.ts'
import {
  gathered,
  packedPage,
  readPage,
  scriptsOf,
  type Site,
  type SitePage,
} from '@/integrations/pack/html.ts'

const files = ['index.html', 'find/index.html', 'stills/a.svg']
const site: Site = { base: '/', address: null, has: (name) => files.includes(name) }
const packed = (body: string, name = 'find/index.html'): string =>
  packedPage(readPage(name, `<html lang="en"><head></head><body>${body}</body></html>`), 'scripts/1.js', site)

describe('a page of the pack', () => {
  test('leads to files, from wherever it lies', () => {
    const body = '<a href="/">x</a><img src="/stills/a.svg"><a href="#there">y</a>'
    expect(packed(body)).toContain(
      '<a href="../index.html">x</a><img src="../stills/a.svg"><a href="#there">y</a>',
    )
    expect(packed(body, 'index.html')).toContain('<a href="./index.html">x</a><img src="./stills/a.svg">')
  })

  test('has the addresses in its data led to files too, and no other words', () => {
    const data =
      '<p data-way="/find/" data-all="{&quot;1&quot;:&quot;/find/?a#b&quot;}" data-name="/no/"></p>'
    expect(packed(data)).toContain(
      '<p data-way="../find/index.html" data-all="{&quot;1&quot;:&quot;../find/index.html?a#b&quot;}" data-name="/no/"></p>',
    )
    expect(packed('<script type="application/json">["/find/#x","/a word"]</script>')).toContain(
      '["../find/index.html#x","/a word"]',
    )
  })

  test('has one plain script in the place of its modules, and its fonts in one file', async () => {
    const { code } = await loadDeferredScripts()
    const modules =
      '<script type="deferred" src="/_astro/a.js" data-with="/_astro/b.js"></script><script type="module">go()</script>'
    expect(scriptsOf(readPage('find/index.html', modules))).toEqual([
      { src: '/_astro/a.js' },
      { text: 'go()' },
    ])
    const page = packed(
      `<link rel="expect" href="#end">${modules}<script id="end">${code}</script><style>@font-face{src:url(/a.woff2)}p{margin:0}</style>`,
    )
    expect(page).toContain('<style>p{margin:0}</style>')
    expect(page).toContain('<script defer src="../scripts/1.js"></script></head>')
    expect(page).not.toMatch(/module|deferred|expect|"end"/)
  })

  test('is not made where a link leads nowhere, or a script is of an unknown kind', () => {
    expect(() => packed('<a href="/lost/">x</a>')).toThrow('leads nowhere: href="/lost/"')
    for (const kind of ['module', 'deferred'])
      expect(() => packed(`<script async type="${kind}" src="/a.js"></script>`)).toThrow('module script')
  })

  test('has in it what a server’s page fetches from others', () => {
    const others = new Map([
      ['one/index.html', '<main><section class="sheet"><h2>One</h2><p>All of it</p></section></main>'],
      ['two/index.html', '<p>No such thing</p>'],
    ])
    const read = (name: string): SitePage => readPage(name, others.get(name) ?? '')
    const page = (from: string): SitePage =>
      readPage(
        'all/index.html',
        `<p data-until="gathered">Without scripts …</p><section class="sheet" id="a" data-from="/site/${from}/"><a href="/site/${from}/">One</a></section>`,
      )
    expect(gathered(page('one'), '/site/', read).html).toMatch(
      /^<section class="sheet" id="a" ?><h2>One<\/h2><p>All of it<\/p><\/section>$/,
    )
    expect(() => gathered(page('two'), '/site/', read)).toThrow('two/index.html has no sheet')
  })
})
