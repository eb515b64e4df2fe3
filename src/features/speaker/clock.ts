import { required, tell } from '../../browser/dom.ts'

const two = (value: number): string => String(value).padStart(2, '0')

/** A time of the day as clocks show it, 9:05. */
export const timeOfDay = (date: Date): string => `${date.getHours()}:${two(date.getMinutes())}`

/** How long something has lasted, in ms, as minutes and seconds: 0:07, 61:30. Nought where a clock was set back. */
export const lasted = (time: number): string => {
  const seconds = Math.max(0, Math.floor(time / 1000))
  return `${Math.floor(seconds / 60)}:${two(seconds % 60)}`
}

/** When the class began, as the address keeps it, in ms; undefined where it names no such time. */
const begunIn = (search: string): number | undefined => {
  const text = new URLSearchParams(search).get('since') ?? ''
  return /^\d{10,15}$/.test(text) ? Number(text) : undefined
}

/** Shows the time of the day and the time since the class began. The beginning stands in the address: a reload keeps it. */
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
    tell(clock, timeOfDay(new Date()))
    tell(since, lasted(Date.now() - begun))
  }
  required(root, '.speaker-reset', HTMLButtonElement).addEventListener('click', () => {
    begin(Date.now())
  })
  begin(begunIn(location.search) ?? begun)
  setInterval(show, 1000)
}
