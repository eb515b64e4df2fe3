import { describe, expect, test } from 'vitest'
import { batched } from '@/drawings/scene/engine/batch.ts'

const square = (x: number, y: number): string =>
  `M${x},${y}L${x + 10},${y}L${x + 10},${y + 10}L${x},${y + 10}Z`

describe('paths drawn together', () => {
  test('are those of one look with nothing drawn between them in their place', () => {
    const found = batched([
      { look: 'a', d: square(0, 0) },
      { look: 'b', d: square(5, 5) },
      { look: 'a', d: square(40, 0) },
      { look: 'a', d: square(8, 8) },
    ])
    expect(found).toEqual([
      { look: 'a', d: square(0, 0) + square(40, 0) },
      { look: 'b', d: square(5, 5) },
      { look: 'a', d: square(8, 8) },
    ])
  })

  test('go together past a slanting neighbour that only its rectangle overlaps', () => {
    const slant = 'M0,100L100,0L104,4L4,104Z'
    const found = batched([
      { look: 'a', d: square(0, 0) },
      { look: 'b', d: slant },
      { look: 'a', d: square(10, 20) },
    ])
    expect(found).toHaveLength(2)
  })

  test('never with a surface whose edge they would show over', () => {
    const rims = [square(0, 0), square(5, 0)].map((d) => ({ look: 'm-rim', d }))
    expect(batched(rims)).toHaveLength(2)
  })

  test('with the round end of a wire, which reaches further than its corners', () => {
    const wire = 'M20,0L20,50A8,8 0 0 1 4,50L4,0A8,8 0 0 1 20,0Z'
    const found = batched([
      { look: 'a', d: square(30, 70) },
      { look: 'b', d: wire },
      { look: 'a', d: 'M10,56L12,56L12,59Z' },
    ])
    expect(found).toHaveLength(3)
  })
})
