import medium from '@font-subsets/barlow-semi-condensed-latin-500-normal.woff2?inline'
import semiBold from '@font-subsets/barlow-semi-condensed-latin-600-normal.woff2?inline'

/** The typeface of all that is written in a picture, and what a program without it takes. */
export const typeface = `'Barlow Semi Condensed', 'Arial Narrow', 'Roboto Condensed', Arial, sans-serif`

const fonts = [
  { weight: 500, data: medium },
  { weight: 600, data: semiBold },
]

/** The rules that bring a picture its typeface, with the letters of the site's own texts in it. */
export const fontRules = fonts
  .map(
    ({ weight, data }) =>
      `@font-face{font-family:'Barlow Semi Condensed';font-weight:${weight};src:url(${data}) format('woff2')}`,
  )
  .join('')
