import { globSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import { parseHTML } from 'linkedom'
import { beforeAll, describe, expect, test } from 'vitest'
import { figureMarkup, machineInState } from '@/site/machine-state.ts'
import { figures } from '@/site/figures.ts'
import { alone, minified, withShortStyles, withStyles } from '@/site/minify-svg.ts'

const states = ['at=R23', 'at=R31.5&pass=4&break=strip.3.seized&break=pin.7.low']

/** A figure's drawing as it is built, and its styles. */
const built = (id: string, state: string): { drawing: string; css: string } => {
  const { run, frame } = machineInState(state)
  const files = [
    'styles/tokens',
    'drawings/shared/styles/*',
    'drawings/shared/detail/detail',
    `drawings/${id}/figure`,
  ]
  return {
    drawing: figureMarkup(figures.get(id)!, run, frame, { shape: 'narrow', prefix: 'still' }),
    css: files
      .flatMap((name) => globSync(`src/${name}.css`).sort())
      .map((file) => readFileSync(file, 'utf8'))
      .join('\n'),
  }
}

/** What a style sheet sets on each element of a document: the properties in the order in which rules set them. */
const styled = (document: Document, css: string): string[] => {
  const lists = new Map([...document.querySelectorAll('svg, svg *')].map((each) => [each, [] as string[]]))
  const rules = css.replace(/\/\*[\s\S]*?\*\/|<!\[CDATA\[|\]\]>/g, '').matchAll(/([^{};]+)\{([^{}]*)/g)
  let within = ''
  for (const [, text = '', body = ''] of rules) {
    const selector = text
      .replace(/^[\s}]+/, '')
      .replace(/\(\s+/g, '(')
      .trim()
    const properties = [...body.matchAll(/(?:^|;)\s*([\w-]+)\s*:/g)].map(([, name]) => name)
    if (selector.startsWith('@')) within = selector.replace(/\s/g, '')
    else if (/\}\s*$/.test(text.slice(0, text.indexOf(selector)))) within = ''
    if (selector.startsWith('@')) continue
    for (const element of document.querySelectorAll(selector))
      lists.get(element)?.push(...properties.map((name) => `${within} ${name}`))
  }
  return [...lists.values()].map((list) => list.join())
}

/** The same without the properties of one's own, of which only those are kept that are asked for. */
const styledItself = (lists: readonly string[]): string[] =>
  lists.map((list) =>
    list
      .split(',')
      .filter((name) => !name.includes(' --'))
      .join(),
  )

/** A picture's pixels, its lines drawn black. */
const pixels = (drawing: string): Uint8Array => {
  const lines = '<style>path{fill:none;stroke:#000;stroke-width:1.5}</style>'
  const picture = new Resvg(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 400" width="800" height="800">${lines}${drawing}</svg>`,
  )
  const image = picture.render()
  const bytes = Uint8Array.from(image.pixels)
  image.free()
  picture.free()
  return bytes
}

beforeAll(async () => {
  const { resolve } = createRequire(import.meta.url)
  await initWasm(readFileSync(resolve('@resvg/resvg-wasm/index_bg.wasm')))
})

describe.each([...figures.keys()])('the figure %s in fewer words', (id) => {
  test.each(states)('looks the same, %s', (state) => {
    const { drawing, css } = built(id, state)
    const less = minified(drawing)
    expect(less.length).toBeLessThan(drawing.length)
    const least = alone(css, less)
    expect(least.length).toBeLessThan(less.length)
    // What is minified only is on the way to it.
    const [before, after] = [pixels(drawing), pixels(least)]
    expect(before.some((value) => value > 200)).toBe(true)
    const far = before.filter((value, n) => Math.abs(value - (after[n] ?? 0)) > 64).length
    expect(far).toBeLessThan(before.length / 10_000)
  })

  test.each(states)('has by its own styles what it has by all of them, %s', (state) => {
    const { drawing, css } = built(id, state)
    const lean = alone(css, minified(drawing))
    const less = withStyles('viewBox="0 0 9 9"', css, lean)
    const { document } = parseHTML(less)
    const kept = /<style>([\s\S]*)<\/style>/.exec(less)?.[1] ?? ''
    expect(kept.length).toBeLessThan(css.length * 0.8)
    const styledByAll = styled(document, css)
    expect(styled(document, kept)).toEqual(styledByAll)
    const short = withShortStyles('viewBox="0 0 9 9"', css, minified(drawing))
    expect(short.length).toBeLessThan(less.length)
    const shortCss = /<style>([\s\S]*)<\/style>/.exec(short)?.[1] ?? ''
    expect(styledItself(styled(parseHTML(short).document, shortCss))).toEqual(styledItself(styledByAll))
    const asked = [...shortCss.matchAll(/var\((--[\w-]+)/g)].map(([, name = '']) => name)
    expect(asked.filter((name) => css.includes(`${name}:`) && !shortCss.includes(`${name}:`))).toEqual([])
  })
})

test('what is hidden is left out, and what scripts ask for', () => {
  expect(
    minified('<g data-part="pin.1"><path display="none" d="M0,0H9"/><path class="a" d="M1,2L3,4"/></g>'),
  ).toBe('<g><path class="a" d="m1 2 2 2"/></g>')
})

test('no style is left of what is not in a picture', () => {
  const css = 'path { fill: none; } .a { stroke: red; } .b .c { stroke: blue; }'
  expect(withStyles('width="9"', css, '<path class="a"/>')).toBe(
    '<svg xmlns="http://www.w3.org/2000/svg" width="9"><style>path{fill:none}.a{stroke:red}</style><path class="a"/></svg>',
  )
})

test('of a picture on its own, nothing is left that draws nothing or that no style asks for', () => {
  const css = '.a[data-push] { stroke: red; } .b { stroke: blue; } .b .c { fill: red; }'
  const drawing =
    '<g class="b"/><path class="a x" data-push="push" data-row="1" d="M0 0h9"/><path class="a" data-push="push" data-row="2" d="M0 5h9"/><path class="a"/>'
  expect(alone(css, drawing)).toBe('<path data-push="push" d="M0 0h9M0 5h9" class="a"/>')
  expect(withShortStyles('width="9"', css, drawing)).toBe(
    '<svg xmlns="http://www.w3.org/2000/svg" width="9"><style>.a[data-push]{stroke:red}</style><path data-push="push" d="M0 0h9M0 5h9" class="a"/></svg>',
  )
})

test('shapes of one look stay apart where one is over the other: both may be seen through', () => {
  const drawing = '<path class="a" d="M0 0h9v9h-9z"/><path class="a" d="M5 5h9v9h-9z"/>'
  expect(alone('.a { fill-opacity: 0.5; }', drawing).match(/<path/g)).toHaveLength(2)
})
