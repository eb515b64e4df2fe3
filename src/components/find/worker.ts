import { adviceOf } from './advise.ts'
import type { Ask, CourseAsk, Told } from './messages.ts'
import { courseTo } from './course.ts'
import { answersOf, suspectsAsked } from './reckon.ts'

const tell = (told: Told): void => {
  postMessage(told)
}

addEventListener('message', ({ data }: MessageEvent<Ask | CourseAsk>) => {
  if ('course' in data) {
    tell({ kind: 'course', passes: courseTo(data.course, data.first) })
    return
  }
  const start = performance.now()
  const { dictionary, suspects } = suspectsAsked(data)
  tell({ kind: 'ranked', id: data.id, answers: answersOf(data, suspects), ms: performance.now() - start })
  const advice = adviceOf(data, dictionary, suspects)
  tell({ kind: 'advised', id: data.id, advice, ms: performance.now() - start })
})
