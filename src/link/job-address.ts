/** The parts of a job that can be in an address: what one does with a machine, in its order. */
export const jobMoments = ['intake', 'look', 'decide', 'work', 'measure', 'prove', 'hand-over'] as const
export type JobMoment = (typeof jobMoments)[number]

/** Where an address leads: a job's moment, or null for the list of jobs and for what can't be read. */
export const readJobAddress = (fragment: string): { id: number; moment: JobMoment } | null => {
  const [, digits, name] = /^#?(\d{1,10})\.([a-z-]{1,12})$/.exec(fragment) ?? []
  const id = Number(digits)
  const moment = jobMoments.find((known) => known === name)
  return moment !== undefined && id >= 1 && id <= 0xffff_ffff ? { id, moment } : null
}

/** The fragment of a job's moment: its random number and the moment, nothing of the machine. */
export const writeJobAddress = (id: number, moment: JobMoment): string => `#${id}.${moment}`
