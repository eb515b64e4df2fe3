import { advisedCourse } from '../find/advised-course.ts'
import { bestCourse } from '../find/best-course.ts'
import { inferWhole } from '../find/infer.ts'
import { answersOf, type WorkerMessage, type WorkerQuestion } from '../find/messages.ts'
import { mostLooks } from '../find/looks.ts'
import { nextLooks } from '../find/next.ts'
import { soundParts } from '../find/sound-parts.ts'
import { servingWords } from '../words/repairs.ts'
import { findingRemarks, notLookedAtWords, unweighedWords, wholeWords } from '../words/whole-finding.ts'

const send = (message: WorkerMessage): void => {
  postMessage(message)
}

/** So long, in ms, nobody must have marked anything before it is computed what was shown right. */
const rest = 300
let resting: ReturnType<typeof setTimeout> | undefined

addEventListener('message', ({ data }: MessageEvent<WorkerQuestion>) => {
  switch (data.kind) {
    case 'course': {
      const { machine, first } = data
      const [fault, ...others] = machine.faults
      const best = fault && others.length === 0 ? bestCourse(fault, first, data) : null
      send({ kind: 'course', best, advised: advisedCourse(machine, first, data, best?.alike) })
      break
    }
    case 'infer': {
      const { id, query: whole } = data
      clearTimeout(resting)
      const query = { ...whole, passes: whole.passes.slice(0, mostLooks) }
      const start = performance.now()
      const inference = inferWhole(query)
      const { finding } = inference
      send({
        kind: 'ranked',
        id,
        answers: answersOf(query, finding),
        whole: wholeWords(finding),
        remarks: [
          ...(query.passes.some(({ needles }) => /[spu]/.test(needles)) ? findingRemarks(finding) : []),
          ...unweighedWords(whole.passes.length - query.passes.length, mostLooks),
        ],
        unexplained: finding.unexplained,
        ms: performance.now() - start,
      })
      send({ kind: 'next', id, looks: nextLooks(query, inference), ms: performance.now() - start })
      resting = setTimeout(() => {
        send({
          kind: 'shown',
          sentences: [servingWords(soundParts(query, finding)), ...notLookedAtWords(query.passes)],
        })
      }, rest)
      break
    }
  }
})
