import type { Course } from './pen.ts'

/** Joins lines between pairs of points to courses: a line that begins or ends where a course has come to goes on with it. */
export const joinedCourses = (pairs: Course): Course[] => {
  const lines = Array.from(
    { length: pairs.length / 2 },
    (_, n) => [pairs[2 * n]!, pairs[2 * n + 1]!] as const,
  )
  const courses: number[][] = []
  for (let line = lines.shift(); line; line = lines.shift()) {
    const course = [...line]
    for (;;) {
      const end = course.at(-1)!
      const next = lines.findIndex((ends) => ends.includes(end))
      if (next < 0) break
      const [from, to] = lines.splice(next, 1)[0]!
      course.push(from === end ? to : from)
    }
    courses.push(course)
  }
  return courses
}

/** Courses from each point to the next, two and two: for lines that have no end in common. */
export const pairedCourses = (lines: number): Course[] =>
  Array.from({ length: lines }, (_, n) => [2 * n, 2 * n + 1])
