import { computeTestCard } from '../find/test-card.ts'
import type { CardAsk, CardTold } from '../find/test-card-messages.ts'
import { testCardPasses, testCardSession } from '../link/test-card-session.ts'

const tell = (told: CardTold): void => {
  postMessage(told)
}

addEventListener('message', ({ data }: MessageEvent<CardAsk>) => {
  const start = performance.now()
  const search = computeTestCard(data.seed)
  let step = search.next()
  while (!step.done) {
    tell({ kind: 'progress', progress: step.value })
    step = search.next()
  }
  const { card, runs, classes, most, hidden, fewest, dictionary } = step.value
  tell({
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
