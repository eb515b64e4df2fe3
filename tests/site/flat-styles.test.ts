import { describe, expect, test } from 'vitest'
import { flatStyles, flattened } from '@/site/preview/flat-styles.ts'

describe('styles in plain values', () => {
  test('a property that one selector sets holds wherever it is asked for', () => {
    expect(flatStyles(':root { --ink: #123; } .line { stroke: var(--ink); }')).toBe('.line{stroke:#123}')
  })

  test('one that several set makes a rule for each, for elements with both classes', () => {
    expect(flatStyles('.metal { --t0: #aaa; } .card { --t0: #fff; } .t0 { fill: var(--t0); }')).toBe(
      '.t0.metal{fill:#aaa}.t0.card{fill:#fff}',
    )
  })

  test('a property may be made of another one', () => {
    expect(flatStyles(':root { --line: #111; --edge: var(--line); } .a { stroke: var(--edge); }')).toBe(
      '.a{stroke:#111}',
    )
  })

  test('the value beside a name is used where nothing sets it, and a length is computed', () => {
    expect(flatStyles('.a { stroke-width: calc(1.5px * var(--wide, 1)); }')).toBe('.a{stroke-width:1.5px}')
    expect(flatStyles('.a { stroke-width: calc(1.5px * var(--wide, 1)); }', { '--wide': '2' })).toBe(
      '.a{stroke-width:3px}',
    )
  })

  test('other schemes, comments and mixtures of colours are left out, all selectors of a list kept', () => {
    const css = `/* a */ @media (prefers-color-scheme: dark) { .a { fill: #000; } .b { fill: #000; } }
      .a :is(.x, .y) { fill: none; } .c { fill: color-mix(in srgb, red 50%, blue); }`
    expect(flatStyles(css)).toBe('.a .x,.a .y{fill:none}')
  })

  test('a file keeps all but its styles, and the values that its markup sets go into them', () => {
    const file =
      '<svg><style>.l{stroke-width:calc(2px*var(--line-wide,1))}</style><g style="--line-wide:3" class="l"/></svg>'
    expect(flattened(file)).toBe(
      '<svg><style>.l{stroke-width:6px}</style><g style="--line-wide:3" class="l"/></svg>',
    )
  })
})
