import { type Config, optimize, type PluginConfig } from 'svgo'
import { forItself, withoutIdleRules } from './alone-svg.ts'

/** What is not to be seen, and the parts' names, which only scripts ask for. */
const leftOut: PluginConfig[] = [
  { name: 'removeAttrs', params: { attrs: 'data-part' } },
  {
    name: 'hidden',
    fn: () => ({
      element: {
        enter: (node, parent) => {
          if (node.attributes.display !== 'none') return
          parent.children = parent.children.filter((child) => child !== node)
        },
      },
    }),
  },
]

/** Paths in fewer words, their lines and curves left as they are; drawings have tenths of a pixel, sums of them too. */
const paths: PluginConfig = {
  name: 'convertPathData',
  params: {
    floatPrecision: 2,
    noSpaceAfterFlags: true,
    applyTransforms: false,
    convertToQ: false,
    makeArcs: { threshold: 0, tolerance: 0 },
    removeUseless: false,
    smartArcRounding: false,
    straightCurves: false,
  },
}

/** Only the styles of what is in the picture, each rule where it was: a later one is still stronger than an earlier. */
const styles: PluginConfig = {
  name: 'minifyStyles',
  params: { restructure: false, usage: { force: true } },
}

const by = (svg: string, plugins: NonNullable<Config['plugins']>): string => optimize(svg, { plugins }).data

const root = '<svg xmlns="http://www.w3.org/2000/svg">'

const insideBy = (markup: string, plugins: PluginConfig[]): string =>
  by(`${root}${markup}</svg>`, plugins).slice(root.length, -'</svg>'.length)

/** The inside of a picture that no script draws on, in fewer words and without what is hidden in it. */
export const minified = (markup: string): string => insideBy(markup, [...leftOut, paths])

/** The inside of a picture that will be on its own with these styles, already minified: only what they and eyes ask for. */
export const alone = (css: string, markup: string): string => insideBy(markup, [...forItself(css), paths])

/** Names for classes, the shortest first. */
const shortName = (n: number): string => {
  const letters = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ'
  const [more, letter] = [Math.floor(n / letters.length), letters.charAt(n % letters.length)]
  return more === 0 ? letter : letter + shortName(more - 1)
}

/** Styles and markup with a short name in place of each class: a drawing has a thousand of them. */
const withShortClasses = (css: string, markup: string): readonly [css: string, markup: string] => {
  const counts = new Map<string, number>()
  for (const [, names = ''] of markup.matchAll(/ class="([^"]*)"/g))
    for (const name of names.split(' ')) counts.set(name, (counts.get(name) ?? 0) + 1)
  const ranked = [...counts].sort(([, one], [, other]) => other - one).map(([name]) => name)
  const short = new Map(ranked.map((name, n) => [name, shortName(n)]))
  const shortOf = (name: string): string => short.get(name) ?? name
  return [
    // What no longer has a class of its own in the picture must not be taken for one of the short names.
    css.replace(
      /\.(-?[_a-zA-Z][\w-]*)(?=[^{}]*\{)/g,
      (_, name: string) => `.${short.get(name) ?? `x-${name}`}`,
    ),
    markup.replace(
      / class="([^"]*)"/g,
      (_, names: string) => ` class="${names.split(' ').map(shortOf).join(' ')}"`,
    ),
  ]
}

/** A picture on its own: its inside, already short, with those of the styles that it needs. */
export const withStyles = (attributes: string, css: string, markup: string): string =>
  by(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}><style>${css}</style>${markup}</svg>`, [
    styles,
  ]).replace(/<style>.*?<\/style>/s, (element) =>
    element
      .replaceAll('&apos;', "'")
      .replaceAll('&quot;', '"')
      .replace(/<!\[CDATA\[([^<&]*)\]\]>/, '$1'),
  )

/** Styles without the properties of one's own that nothing in them asks for, and without rules that say nothing. */
const withoutUnused = (css: string): string => {
  const kept = css
    .replace(/(--[\w-]+):[^;{}]*;?/g, (declaration, name: string) =>
      css.includes(`var(${name}`) ? declaration : '',
    )
    .replace(/[^{}]+\{\}/g, '')
  return kept === css ? css : withoutUnused(kept)
}

/**
 * As `withStyles`, with short names for its classes, and only those rules and properties of one's own that something
 * in the picture asks for.
 */
export const withShortStyles = (attributes: string, css: string, markup: string): string => {
  const [shortCss, shortMarkup] = withShortClasses(css, alone(css, markup))
  return withStyles(attributes, shortCss, shortMarkup).replace(/(?<=<style>).*?(?=<\/style>)/s, (text) =>
    withoutUnused(withoutIdleRules(text, `<svg>${shortMarkup}</svg>`)),
  )
}
