import { adviceOf } from '../features/find/advise.ts'
import { bestCourse } from '../features/find/best-course.ts'
import type { Ask, CourseAsk, Told } from '../features/find/messages.ts'
import { courseTo } from '../features/find/course.ts'
import { answerOf, answersOf, suspectsAsked } from '../features/find/reckon.ts'

const tell = (told: Told): void => {
  postMessage(told)
}

addEventListener('message', ({ data }: MessageEvent<Ask | CourseAsk>) => {
  if ('course' in data) {
    const best = bestCourse(data.course, data.first)
    tell({ kind: 'course', ...best, advised: courseTo(data.course, data.first, best.alike) })
    return
  }
  const start = performance.now()
  const { dictionary, suspects, nearest } = suspectsAsked(data)
  tell({
    kind: 'ranked',
    id: data.id,
    answers: answersOf(data, suspects),
    nearest: nearest && answerOf(data, nearest),
    ms: performance.now() - start,
  })
  const advice = adviceOf(data, dictionary, suspects)
  tell({ kind: 'advised', id: data.id, advice, ms: performance.now() - start })
})
