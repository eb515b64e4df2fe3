/** A scheme of colours in which the site is drawn. */
export type Scheme = 'light' | 'dark'

/** Where the block that begins at a brace ends. */
const blockEnd = (css: string, brace: number): number => {
  let depth = 0
  for (let place = brace; place < css.length; place++) {
    if (css[place] === '{') depth += 1
    if (css[place] === '}') depth -= 1
    if (depth === 0) return place
  }
  throw new Error('a block of the styles has no end')
}

/**
 * Styles as they are in a scheme, whatever the reader's system, screen and paper are: what is only for the scheme holds,
 * and what is for any other medium is left out. It goes by the text, since browsers write rules back without the values
 * of shorthands that have variables in them.
 */
export const inScheme = (css: string, scheme: Scheme): string => {
  const start = css.indexOf('@media')
  if (start === -1) return css
  const brace = css.indexOf('{', start)
  const end = blockEnd(css, brace)
  const medium = css.slice(start, brace).replaceAll(/\s/g, '')
  const kept = medium === `@media(prefers-color-scheme:${scheme})` ? css.slice(brace + 1, end) : ''
  return css.slice(0, start) + kept + inScheme(css.slice(end + 1), scheme)
}
