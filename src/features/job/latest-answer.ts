/** How an answer is shown, and what is shown until it is there. */
interface Shows<Answer> {
  readonly begin: () => void
  readonly show: (answer: Answer) => void
  readonly fail: () => void
}

/** Asks only where what the question is about has changed, and shows only the answer to the last question. */
export const askForLatest = <Answer>({
  begin,
  show,
  fail,
}: Shows<Answer>): ((about: unknown, ask: () => Promise<Answer>) => void) => {
  let last: string | null = null
  return (about, ask) => {
    const key = JSON.stringify(about)
    if (key === last) return
    last = key
    begin()
    ask().then((answer) => {
      if (last === key) show(answer)
    }, fail)
  }
}
