import { computeTestCard } from '../find/test-card.ts'
import type { CardRequest, CardMessage } from '../find/test-card-messages.ts'
import { testCardPasses, testCardSession } from '../link/test-card-session.ts'

const post = (message: CardMessage): void => {
  postMessage(message)
}

addEventListener('message', ({ data }: MessageEvent<CardRequest>) => {
  const start = performance.now()
  const search = computeTestCard(data.seed)
  let step = search.next()
  while (!step.done) {
    post({ kind: 'progress', progress: step.value })
    step = search.next()
  }
  const { card, runs, classes, most, hidden, fewest, dictionary } = step.value
  post({
    kind: 'found',
    found: {
      card,
      runs,
      classes: classes.length,
      most,
      hidden: hidden.length,
      fewest,
      session: testCardSession(testCardPasses(dictionary.views)),
      ms: performance.now() - start,
    },
  })
})
