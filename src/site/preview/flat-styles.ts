/** A style sheet without what the renderer of preview pictures does not know: it has no properties of one's own, and no sums. */

interface Rule {
  readonly selectors: readonly string[]
  readonly declarations: readonly (readonly [name: string, value: string])[]
}

/** A sheet without its rules for other schemes, for paper and the like, and without its fonts and comments. */
const withoutAtRules = (css: string): string => {
  let kept = ''
  let depth = 0
  let isAt = false
  for (const letter of css.replace(/\/\*.*?\*\//gs, '')) {
    if (letter === '@' && depth === 0) isAt = true
    if (!isAt) kept += letter
    if (letter === '{') depth++
    if (letter === '}' && --depth === 0) isAt = false
  }
  return kept
}

/** The selectors that one with `:is(…)` means. */
const expanded = (selector: string): string[] => {
  const found = /:is\(([^()]*)\)/.exec(selector)
  if (!found) return [selector]
  const [whole, list = ''] = found
  return list.split(',').flatMap((one) => expanded(selector.replace(whole, one.trim())))
}

/** The parts of a list with commas, but for those in brackets. */
const listed = (text: string): string[] => text.split(/,(?![^(]*\))/).map((part) => part.trim())

const rulesOf = (css: string): Rule[] =>
  [...withoutAtRules(css).matchAll(/([^{}]+)\{([^{}]*)\}/g)].map(([, selectors = '', body = '']) => ({
    selectors: listed(selectors).flatMap(expanded),
    declarations: body
      .split(';')
      .filter((line) => line.includes(':'))
      .map((line) => {
        const colon = line.indexOf(':')
        return [line.slice(0, colon).trim(), line.slice(colon + 1).trim()]
      }),
  }))

const own = (name: string): boolean => name.startsWith('--')

/** A value with what is known put in; a product of a length and a number computed. */
const filled = (value: string, known: ReadonlyMap<string, string>): string => {
  const next = value
    .replace(/var\((--[\w-]+)(?:,([^()]*))?\)/g, (whole, name: string, other?: string) => {
      return known.get(name) ?? other?.trim() ?? whole
    })
    .replace(
      /calc\(([\d.]+)px ?\* ?([\d.]+)\)/g,
      (_, one: string, other: string) => `${Number(one) * Number(other)}px`,
    )
  return next === value ? value : filled(next, known)
}

const variants = (rules: readonly Rule[]): Map<string, Map<string, string>> => {
  const found = new Map<string, Map<string, string>>()
  for (const { selectors, declarations } of rules)
    for (const [name, value] of declarations.filter(([name]) => own(name)))
      for (const selector of selectors) {
        const values = found.get(name) ?? new Map<string, string>()
        found.set(name, values.set(selector, value))
      }
  return found
}

/**
 * A sheet in plain values, in its light scheme. A property of one's own that one selector sets holds for the whole picture;
 * one that several set makes a rule for each, for elements that both selectors fit. What mixes colours is left out.
 * @param given values that the picture's markup sets
 */
export const flatStyles = (css: string, given: Readonly<Record<string, string>> = {}): string => {
  const rules = rulesOf(css)
  const all = variants(rules)
  const known = new Map(Object.entries(given))
  for (const [name, values] of all) if (values.size === 1) known.set(name, [...values.values()][0]!)
  return rules
    .flatMap(({ selectors, declarations }) => {
      const plain = declarations
        .filter(([name]) => !own(name))
        .map(([name, value]) => [name, filled(value, known)] as const)
        .filter(([, value]) => !value.includes('color-mix') && !value.includes('max('))
      const names = new Set(
        plain.flatMap(([, value]) => [...value.matchAll(/var\((--[\w-]+)/g)].map(([, n]) => n!)),
      )
      const settings = new Set([...names].flatMap((name) => [...(all.get(name)?.keys() ?? [])]))
      const written = (list: readonly string[], values: ReadonlyMap<string, string>): string => {
        const body = plain
          .map(([name, value]) => [name, filled(value, values)] as const)
          .filter(([, value]) => !value.includes('var('))
          .map(([name, value]) => `${name}:${value}`)
        return body.length === 0 ? '' : `${list.join(',')}{${body.join(';')}}`
      }
      if (settings.size === 0) return [written(selectors, known)]
      return [...settings].map((setting) => {
        const values = new Map(known)
        for (const [name, by] of all) if (by.has(setting)) values.set(name, by.get(setting)!)
        return written(
          selectors.map((selector) => selector + setting),
          values,
        )
      })
    })
    .join('')
}

/** A picture as an SVG file with its styles in plain values, for the renderer. */
export const flattened = (svg: string): string => {
  const given = Object.fromEntries(
    [...svg.matchAll(/style="(--[\w-]+): ?([^";]+);?"/g)].map(([, name = '', value = '']) => [name, value]),
  )
  return svg.replace(
    /<style>(?:<!\[CDATA\[)?(.*?)(?:\]\]>)?<\/style>/s,
    (_, css: string) => `<style>${flatStyles(css, given)}</style>`,
  )
}
