import type { IntakeQuestion, Job, JobMoment, JobState } from '../../link/job.ts'

/** Where a job is, in words. */
export const jobStateWords: Readonly<Record<JobState, string>> = {
  in: 'Come in',
  open: 'On the bench',
  waiting: 'Waiting for a part',
  proved: 'Proved',
  'handed-over': 'Handed over',
  'for-parts': 'Kept for parts',
}

/** What one does with a machine, from the door to the door. */
export const jobMomentWords: Readonly<Record<JobMoment, string>> = {
  intake: 'Intake',
  look: 'Look',
  decide: 'Decide',
  work: 'Work',
  prove: 'Prove',
  'hand-over': 'Hand over',
}

interface QuestionWords {
  readonly asks: string
  /** By answer: the answer, and what it makes likelier. */
  readonly answers: Readonly<Record<string, { readonly name: string; readonly means: string }>>
}

/**
 * What the owner is asked, and what each answer makes likelier or less likely. Common practice, from memory: no source.
 */
export const intakeWords: Readonly<Record<IntakeQuestion, QuestionWords>> = {
  plain: {
    asks: 'Does it knit plain well?',
    answers: {
      well: { name: 'Yes', means: 'Needles and the retainer bar stay as likely as ever.' },
      badly: { name: 'No', means: 'Needles and the retainer bar are likelier to be at fault.' },
    },
  },
  onset: {
    asks: 'Did it come suddenly, or slowly?',
    answers: {
      sudden: {
        name: 'Suddenly',
        means: 'What reaches the whole bed, such as the belt or a setting, is likelier; wear is less likely.',
      },
      slow: { name: 'Slowly', means: 'Wear is likelier, and so is oil that has set.' },
    },
  },
  stood: {
    asks: 'Has it stood for years?',
    answers: {
      years: { name: 'Yes', means: 'Old oil, and oil that has set, are likelier.' },
      'in-use': { name: 'No', means: 'Old oil, and oil that has set, are less likely.' },
    },
  },
  opened: {
    asks: 'Was it opened or moved before it began?',
    answers: {
      yes: { name: 'Yes', means: 'The belt may be out of step, or the card askew.' },
      no: { name: 'No', means: 'Belt and card stay as likely as ever.' },
    },
  },
  settings: {
    asks: 'Are the settings right: carriage on pattern, belt engaged, card not on lock?',
    answers: {
      checked: { name: 'Yes, checked', means: 'A wrong setting is hardly likely any more.' },
      unknown: { name: 'Not checked', means: 'Check them first: that costs nothing.' },
    },
  },
}

/** A job's name in a list and as a heading. */
export const jobName = ({ name }: Pick<Job, 'name'>): string =>
  name.trim() === '' ? 'A machine without a name' : name.trim()

/** When something was, as a reader of the page says it: 30 November 2026, 09:12. */
export const timeWords = (time: string): string =>
  new Date(time).toLocaleString('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  })
