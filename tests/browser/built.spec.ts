import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { readCase } from '@/link/case.ts'
import { read } from '@/link/read.ts'
import { readView } from '@/link/scene-view.ts'
import { readSession } from '@/link/session-link.ts'
import { dist } from '@/setup/paths.mjs'
import { sceneViewNames } from '@/words/figures/scene.ts'
import { addressOf, fileAt, files, filesOf, pageOf, textOf } from './built.ts'
import { library } from './model.ts'

/** Attributes that name one address, and those that name several. */
const single = [
  'href',
  'src',
  'poster',
  'action',
  'data',
  'xlink:href',
  'data-chapter-address',
  'data-machine',
]
const several = ['srcset', 'data-with']

interface Link {
  readonly page: string
  readonly tag: string
  readonly text: string
}

/** The site's own address, where the build was given it. */
const site = process.env['SITE'] ?? ''

/** All addresses that the built pages name. */
const links: readonly Link[] = filesOf('.html').flatMap((page) =>
  [...pageOf(page).querySelectorAll('*')].flatMap((element) => {
    const named = single.map((name) => element.getAttribute(name) ?? '')
    const lists = several.flatMap((name) => (element.getAttribute(name) ?? '').split(/[\s,]+/))
    const meta =
      element.getAttribute('property') === 'og:image' ? [element.getAttribute('content') ?? ''] : []
    return [...named, ...lists.filter((text) => text.includes('/')), ...meta]
      .filter((text) => text !== '' && !text.startsWith('data:'))
      .map((text) => ({ page, tag: element.localName, text: text.replace(site, '') }))
  }),
)

const isOwn = ({ text }: Link): boolean => !/^[a-z]+:|^\/\//i.test(text)

/** The page of the parts reads from where the machine is seen, and all else as other pages do. */
const troublesOfParts = (state: string): number => {
  const keys = new URLSearchParams(state)
  const view = readView(keys.get('view') ?? 'front', sceneViewNames)
  keys.delete('view')
  return read(keys.toString(), library).troubles.length + (view.kind === 'refused' ? 1 : 0)
}

/** What a state in a link leaves out, by the page that reads it. */
const troublesOf = (target: string, state: string): number => {
  if (target === 'case/index.html') return readCase(state, library).troubles.length
  if (target === 'parts/index.html') return troublesOfParts(state)
  if (target === 'find/index.html') return readSession(state, library).troubles.length
  return read(state, library).troubles.length
}

/** What is wrong with a link within the site, in a word; empty where nothing is. */
const wrongWith = ({ page, text }: Link): string => {
  const url = new URL(text, addressOf(page))
  const target = fileAt(url)
  if (target === null) return 'leads nowhere'
  const ids = [
    url.searchParams.get('step') ?? '',
    url.hash.includes('=') ? '' : decodeURIComponent(url.hash.slice(1)),
  ]
  for (const id of ids) if (id !== '' && !pageOf(target).getElementById(id)) return `no place ${id}`
  return url.hash.includes('=') && troublesOf(target, url.hash.slice(1)) > 0
    ? 'a state that can’t be read'
    : ''
}

test('every link, script, style and picture of every page is there, and so is the place it names', () => {
  const own = links.filter(isOwn)
  const wrongs = own.flatMap((link) => {
    const wrong = wrongWith(link)
    return wrong === '' ? [] : [`${link.page}: ${link.text} ${wrong}`]
  })
  console.log(`${own.length} links in ${filesOf('.html').length} pages`)
  expect(wrongs).toEqual([])
  expect(own.length).toBeGreaterThan(3000)
})

test('every state and every example that a page carries can be read', () => {
  const carried = (name: string): string[] =>
    filesOf('.html').flatMap((page) =>
      [...pageOf(page).querySelectorAll(`[${name}]`)].map((element) => element.getAttribute(name) ?? ''),
    )
  const [states, sessions] = [carried('data-state'), carried('data-session')]
  expect(states.filter((text) => read(text, library).troubles.length > 0)).toEqual([])
  expect(sessions.filter((text) => readSession(text, library).troubles.length > 0)).toEqual([])
  expect(states.length).toBeGreaterThan(100)
  expect(sessions.length).toBeGreaterThan(3)
})

test('every page is reached from the home page', () => {
  const reached = new Set<string>()
  const follow = (page: string): void => {
    if (reached.has(page)) return
    reached.add(page)
    for (const link of links)
      if (link.page === page && isOwn(link)) {
        const target = fileAt(new URL(link.text, addressOf(page)))
        if (target?.endsWith('.html')) follow(target)
      }
  }
  follow('index.html')
  // The class view opens its speaker's window itself, hosts serve the page for unknown addresses, and an embedded figure
  // is a page of somebody else's.
  const missed = filesOf('.html').filter(
    (page) => !reached.has(page) && !/(^404|\/speaker\/index|^embed\/.+)\.html$/.test(page),
  )
  expect(missed).toEqual([])
})

test('every pattern and every piece that a drawing in a page names is in that page', () => {
  let count = 0
  for (const name of filesOf('.html', '.svg')) {
    const text = textOf(name)
    const ids = new Set([...text.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id))
    for (const [, id] of text.matchAll(/url\(#([^)]+)\)/g)) {
      expect(ids, `${name} #${id ?? ''}`).toContain(id)
      count += 1
    }
  }
  expect(count).toBeGreaterThan(100)
})

test('every file that styles and scripts name is there', () => {
  const wrongs: string[] = []
  let count = 0
  const look = (name: string, address: string, from = addressOf(name)): void => {
    count += 1
    if (fileAt(new URL(address, from)) === null) wrongs.push(`${name}: ${address}`)
  }
  for (const name of filesOf('.css', '.html'))
    for (const [, address = ''] of textOf(name).matchAll(/url\(\s*["']?([^"')]+)["']?\s*\)/g))
      if (!/^(data:|#)/.test(address)) look(name, address)
  for (const name of filesOf('.js'))
    for (const [, address = ''] of textOf(name).matchAll(
      /["'`]((?:\.{1,2}\/|_astro\/)[\w./-]+\.(?:js|css))["'`]/g,
    ))
      look(name, address, address.startsWith('_astro/') ? addressOf('') : undefined)
  expect(wrongs).toEqual([])
  expect(count).toBeGreaterThan(100)
})

test('the manifest, the search and the worker’s list name files that are there, as they are', () => {
  const manifest = JSON.parse(textOf('site.webmanifest')) as Record<'start_url' | 'scope' | 'id', string> & {
    icons: { src: string }[]
  }
  const named = [manifest.start_url, manifest.scope, manifest.id, ...manifest.icons.map(({ src }) => src)]
  const found = JSON.parse(pageOf('search/index.html').querySelector('.documents')?.textContent ?? '[]') as {
    address: string
  }[]
  expect(found.length).toBeGreaterThan(100)
  const wrongs = [...named, ...found.map(({ address }) => address)].filter(
    (text) => wrongWith({ page: 'index.html', tag: 'search', text }) !== '',
  )
  expect(wrongs).toEqual([])

  const listed = [
    ...textOf('sw.js').matchAll(/url:["'`]([^"'`]+)["'`],integrity:["'`]sha256-([^"'`]+)["'`]/g),
  ]
  const names = listed.map(([, url = '', hash]) => {
    const name = fileAt(new URL(url, addressOf(''))) ?? ''
    expect(files, url).toContain(name)
    expect(
      createHash('sha256')
        .update(readFileSync(join(dist, name)))
        .digest('base64'),
      name,
    ).toBe(hash)
    return name
  })
  const kept = filesOf('.html', '.css', '.js', '.woff2').filter((name) => !/^(sw\.js$|embed\/)/.test(name))
  expect(names.sort()).toEqual(expect.arrayContaining(kept))
  expect(
    [...names, ...found.map(({ address }) => address)].filter((name) => name.includes('embed/')),
  ).toEqual([])
})

/** Names by which documents tell what they are written in, and addresses in texts; nothing is fetched from there. */
const inWords = [
  'www.w3.org',
  'purl.org',
  'ns.adobe.com',
  'www.aiim.org',
  'gsap.com',
  'github.com',
  'bit.ly',
  'www.webmproject.org',
  'aomediacodec.github.io',
  'site',
]

test('nothing is fetched from another host, and no link out of the site is without https', () => {
  expect(links.filter((link) => !isOwn(link) && link.tag !== 'a')).toEqual([])
  expect(links.filter((link) => !isOwn(link) && !link.text.startsWith('https://'))).toEqual([])
  const hosts = filesOf('.js', '.css').flatMap((name) =>
    [...textOf(name).matchAll(/\bhttps?:\/\/([\w.-]+\w)/g)].map(([, host = '']) => host),
  )
  expect([...new Set(hosts)].filter((host) => !inWords.includes(host))).toEqual([])
  for (const name of filesOf('.css', '.html'))
    expect(textOf(name), name).not.toMatch(/url\(["']?https?:|@import/)
})

test('no script lists what the parts need that it may fetch: the list weighs more than it saves', () => {
  const scripts = filesOf('.js')
  expect(scripts.length).toBeGreaterThan(100)
  expect(scripts.filter((file) => textOf(file).includes('__vite__mapDeps'))).toEqual([])
})
