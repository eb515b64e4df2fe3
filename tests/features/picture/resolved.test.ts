import { DOMParser } from 'linkedom'
import { describe, expect, test } from 'vitest'
import { createWriter, type StyleOf } from '@/features/picture/resolved.ts'

/** A picture with this inside, whose names keep their letters as they are. */
const svgOf = (inside: string): Element => {
  const text = `<svg class="root">${inside}</svg>`
  return new DOMParser().parseFromString(text, 'image/svg+xml').documentElement as unknown as Element
}

const usual: Readonly<Record<string, string>> = {
  'clip-path': 'none',
  fill: 'rgb(0, 0, 0)',
  'fill-opacity': '1',
  'fill-rule': 'nonzero',
  'font-weight': '400',
  opacity: '1',
  'paint-order': 'normal',
  stroke: 'none',
  'stroke-dasharray': 'none',
  'stroke-dashoffset': '0px',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'stroke-opacity': '1',
  'stroke-width': '1px',
  'text-anchor': 'start',
  visibility: 'visible',
}

/** Styles by class, inherited from no one: what is not said is as usual. */
const styledBy =
  (rules: Readonly<Record<string, Readonly<Record<string, string>>>>, asked: string[] = []): StyleOf =>
  (element) => {
    const name = element.getAttribute('class') ?? ''
    asked.push(name)
    return (property) => rules[name]?.[property] ?? usual[property] ?? ''
  }

describe('a picture without styles', () => {
  test('has its looks as attributes, as far as they are not those around it', () => {
    const styleOf = styledBy({
      strip: { fill: 'rgb(13, 92, 145)', 'stroke-dasharray': '12px, 3px' },
      cut: { fill: 'url("https://x.org/page#hatch")', 'clip-path': 'url("#window")', opacity: '0.5' },
    })
    const picture = svgOf(
      '<g class="strip" data-part="strip.3"><path class="strip" d="M0,0"></path></g><rect class="cut" x="1" id="a"></rect>',
    )
    expect(createWriter(styleOf)(picture)).toBe(
      '<g fill="#0d5c91" stroke-dasharray="12 3"><path d="M0,0"/></g>' +
        '<rect x="1" id="a" fill="url(#hatch)" clip-path="url(#window)" opacity="0.5"/>',
    )
  })

  test('has how much of a colour covers in its opacity', () => {
    const styleOf = styledBy({ a: { fill: 'rgba(255, 0, 0, 0.5)', 'fill-opacity': '0.4' } })
    expect(createWriter(styleOf)(svgOf('<path class="a" d="M0,0"></path>'))).toBe(
      '<path d="M0,0" fill="#ff0000" fill-opacity="0.2"/>',
    )
  })

  test('has nothing that is hidden, runs, links or is fetched, and its words as text alone', () => {
    const styleOf = styledBy({ away: { display: 'none' } })
    const picture = svgOf(
      '<g class="away"><path d="M1,1"></path></g><script>alert(1)</script><image href="a.svg"></image>' +
        '<a href="b"><path d="M2,2"></path></a><foreignObject></foreignObject><text class="n" x="3">5 &lt; 6</text>' +
        '<text></text><path d="M4,4" onclick="alert(2)" style="fill: red"></path>',
    )
    expect(createWriter(styleOf)(picture)).toBe('<text x="3">5 &lt; 6</text><path d="M4,4"/>')
  })

  test('asks once for the style of what looks alike, and again where that changes or its neighbours do', () => {
    const asked: string[] = []
    const write = createWriter(styledBy({ hole: { fill: 'rgb(1, 2, 3)' } }, asked))
    const picture = svgOf('<path class="mark"></path><path class="mark"></path><path class="mark"></path>')
    write(picture)
    expect(asked).toEqual(['mark'])
    write(picture)
    expect(asked).toEqual(['mark'])
    picture.children[1]?.setAttribute('class', 'hole')
    expect(write(picture)).toBe('<path/><path fill="#010203"/><path/>')
    expect(asked).toEqual(['mark', 'mark', 'hole'])
  })
})
