import type { Inks } from '../../drawings/scene/engine/canvas-pen.ts'

const svgName = 'http://www.w3.org/2000/svg'

/** What is read of each look: its tones, its lines, and its marks. */
const samples = [
  't0',
  't1',
  't2',
  't3',
  't4',
  'l-outline',
  'l-crease',
  'l-mark',
  'l-hatching',
  'l-wrong',
  'm-hole',
  'm-opening',
  'm-blocked',
  'l-axis',
]

/** What the styles of the page depend on: the colours are read again when one of these changes. */
const schemes = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map((query) => matchMedia(query))

/** Reads the inks of a look from the styles, by samples in the picture that nobody sees. */
const readInks = (place: Element, look: string): Inks => {
  const [faint] = /^faint /.exec(look) ?? ['']
  const group = document.createElementNS(svgName, 'g')
  group.style.setProperty('--line-wide', '1')
  for (const sample of samples) {
    const path = document.createElementNS(svgName, 'path')
    path.setAttribute('class', `${sample.startsWith('t') ? `${look} ` : faint}${sample}`)
    group.append(path)
  }
  place.append(group)
  const found = [...group.children].map((path) => {
    const { fill, stroke, strokeWidth } = getComputedStyle(path)
    return { fill, stroke, width: Number.parseFloat(strokeWidth) }
  })
  group.remove()
  const line = (n: number): { colour: string; width: number } => {
    const { stroke = '', width = 1 } = found[n] ?? {}
    return { colour: stroke, width }
  }
  const fillOf = (n: number): string => found[n]?.fill ?? ''
  return {
    tones: [0, 1, 2, 3, 4].map(fillOf),
    lines: {
      outline: line(5),
      crease: line(6),
      mark: line(7),
      hatching: line(8),
      wrong: line(9),
      axis: line(13),
    },
    marks: { hole: fillOf(10), opening: fillOf(11), blocked: fillOf(12) },
  }
}

/** Gives the inks of each look, as the styles have them at a place of the page. */
export const inksAt = (place: () => Element): ((look: string) => Inks) => {
  const known = new Map<string, Inks>()
  for (const scheme of schemes)
    scheme.addEventListener('change', () => {
      known.clear()
    })
  return (look) => {
    const found = known.get(look) ?? readInks(place(), look)
    known.set(look, found)
    return found
  }
}
