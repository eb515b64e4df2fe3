/** A colour as other programs read it: `#rrggbb`, and its share of cover, 0 to 1. */
export interface Colour {
  readonly hex: string
  readonly cover: number
}

const hex = (value: number): string =>
  Math.round(Math.min(255, Math.max(0, value)))
    .toString(16)
    .padStart(2, '0')

/** Reads a computed colour, `rgb(…)` or `color(srgb …)`; null where the value is none (CSS Color 4, section 15). */
export const readColour = (value: string): Colour | null => {
  const [, form = '', inside = ''] = /^(rgba?|color)\(([^()]*)\)$/.exec(value) ?? []
  if (form === '') return null
  const numbers = inside
    .replace(/^srgb\s+/, '')
    .split(/[\s,/]+/)
    .map(Number)
  if (numbers.length < 3 || numbers.some(Number.isNaN)) return null
  const whole = form === 'color' ? 255 : 1
  const [red = 0, green = 0, blue = 0, cover = 1] = numbers
  return { hex: `#${[red, green, blue].map((part) => hex(part * whole)).join('')}`, cover }
}
