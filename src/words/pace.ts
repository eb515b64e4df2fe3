import { dimensions } from '../mechanism/dimensions.ts'

/** How long the carriage takes for the whole bed at a speed in mm/s, as people count it: about 2 seconds. */
export const bedTime = (speed: number): string => {
  const seconds = Math.round((dimensions.needles * dimensions.pitch) / speed)
  return seconds <= 1 ? 'about a second' : `about ${seconds} seconds`
}

/** How long something takes, in minutes; `mostMinutes` where it may take longer: half a minute, 90 to 120 minutes. */
export const minutesWords = ({
  minutes,
  mostMinutes,
}: {
  readonly minutes: number
  readonly mostMinutes?: number | undefined
}): string => {
  if (mostMinutes !== undefined) return `${minutes} to ${mostMinutes} minutes`
  return minutes < 1 ? 'half a minute' : minutes === 1 ? '1 minute' : `${minutes} minutes`
}
