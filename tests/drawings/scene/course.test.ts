import { describe, expect, test } from 'vitest'
import { joinedCourses } from '@/drawings/scene/engine/course.ts'

describe('lines joined to courses', () => {
  test('go on where another begins or ends, and round to where they began', () => {
    expect(joinedCourses([0, 1, 2, 1, 2, 3, 3, 0])).toEqual([[0, 1, 2, 3, 0]])
  })

  test('keep every line, where three meet in a point too', () => {
    const courses = joinedCourses([0, 1, 0, 2, 0, 3])
    const lines = courses.flatMap((course) =>
      course.slice(1).map((to, n) => [course[n], to].toSorted().join('-')),
    )
    expect(lines.toSorted()).toEqual(['0-1', '0-2', '0-3'])
  })

  test('are none without lines', () => {
    expect(joinedCourses([])).toEqual([])
  })
})
