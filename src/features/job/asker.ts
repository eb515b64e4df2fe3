/** Asks only where what the question is about has changed, and shows only the answer to the last question. */
export const createAsker = <Answer>(
  show: (answer: Answer) => void,
  fail: () => void,
): ((about: unknown, ask: () => Promise<Answer>) => void) => {
  let last: string | null = null
  return (about, ask) => {
    const key = JSON.stringify(about)
    if (key === last) return
    last = key
    ask().then((answer) => {
      if (last === key) show(answer)
    }, fail)
  }
}
