import { decide } from '../find/decide.ts'
import { inferWhole, type Inference } from '../find/infer.ts'
import { planOf } from '../find/plan.ts'
import { proofPasses } from '../find/prove.ts'
import { statementOf } from '../find/statement.ts'
import type { Query } from '../find/query.ts'
import type { JobAnswer, JobQuestion } from './job-messages.ts'

/** The draw of machines is the same each time, so that chances do not flicker. */
const seed = 1

let last: { readonly key: string; readonly inference: Inference } | null = null

/** What may be wrong by a query; the last one's is kept, since plans are changed more often than notes. */
const inferenceOf = (query: Query): Inference => {
  const key = JSON.stringify(query)
  if (last?.key !== key) last = { key, inference: inferWhole(query) }
  return last.inference
}

const answerTo = (question: JobQuestion): JobAnswer['answer'] => {
  switch (question.ask) {
    case 'decide':
      return decide(question.about.query, inferenceOf(question.about.query), seed, question.about.prices)
    case 'plan':
      return planOf(question.about.ticked, inferenceOf(question.about.query).finding)
    case 'prove':
      return proofPasses(question.about)
    case 'state':
      return statementOf(question.about)
  }
}

addEventListener('message', ({ data }: MessageEvent<JobQuestion>) => {
  postMessage({ id: data.id, answer: answerTo(data) } satisfies JobAnswer)
})
