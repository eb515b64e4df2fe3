import { adviceOf } from './advise.ts'
import type { Ask, Told } from './messages.ts'
import { answersOf, suspectsAsked } from './reckon.ts'

const tell = (told: Told): void => {
  postMessage(told)
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  const start = performance.now()
  const { dictionary, suspects } = suspectsAsked(data)
  tell({ kind: 'ranked', id: data.id, answers: answersOf(data, suspects), ms: performance.now() - start })
  const advice = adviceOf(data, dictionary, suspects)
  tell({ kind: 'advised', id: data.id, advice, ms: performance.now() - start })
})
