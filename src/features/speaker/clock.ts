import { required, setText } from '../../browser/dom.ts'

const twoDigits = (value: number): string => String(value).padStart(2, '0')

/** A time of the day as clocks show it, 9:05. */
export const timeOfDay = (date: Date): string => `${date.getHours()}:${twoDigits(date.getMinutes())}`

/** A duration in ms as minutes and seconds: 0:07, 61:30. Nought for a negative one, after a clock was set back. */
export const durationWords = (time: number): string => {
  const seconds = Math.max(0, Math.floor(time / 1000))
  return `${Math.floor(seconds / 60)}:${twoDigits(seconds % 60)}`
}

/** When the class began, from the address's query, in ms since 1970; undefined where it has no such time. */
const beginningIn = (search: string): number | undefined => {
  const text = new URLSearchParams(search).get('since') ?? ''
  return /^\d{10,15}$/.test(text) ? Number(text) : undefined
}

/** Shows the time of the day and the time since the class began. The beginning is kept in the address, so a reload keeps it. */
export const startClock = (root: HTMLElement): void => {
  const clock = required(root, '.speaker-clock', HTMLElement)
  const since = required(root, '.speaker-since', HTMLElement)
  let begun = Date.now()
  const begin = (time: number): void => {
    begun = time
    const url = new URL(location.href)
    url.searchParams.set('since', String(begun))
    history.replaceState(history.state, '', url)
    show()
  }
  const show = (): void => {
    setText(clock, timeOfDay(new Date()))
    setText(since, durationWords(Date.now() - begun))
  }
  required(root, '.speaker-reset', HTMLButtonElement).addEventListener('click', () => {
    begin(Date.now())
  })
  begin(beginningIn(location.search) ?? begun)
  setInterval(show, 1000)
}
