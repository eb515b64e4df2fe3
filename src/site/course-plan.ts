/** A stretch of a course: how long it takes, where it is shown, what to show and what to ask. */
interface Stretch {
  readonly minutes: number
  readonly what: string
  /** The chapter and the step to begin at, as `the-hold/dip`; none where nothing of the site is shown. */
  readonly at?: string
  readonly show: string
  readonly ask?: string
}

/** A course: how long it is in all, in minutes, and its stretches. */
export interface Course {
  readonly minutes: number
  readonly stretches: readonly Stretch[]
}

const hour: Course = {
  minutes: 60,
  stretches: [
    {
      minutes: 5,
      what: 'A card goes round',
      at: 'the-whole-journey/a-bed-and-a-card',
      show: 'A real card in every hand, then the whole machine.',
      ask: 'What do you think reads the holes?',
    },
    {
      minutes: 15,
      what: 'From one hole to one needle',
      at: 'the-whole-journey/one-hole',
      show: 'Every step as far as the two gates, with the carriage turned by hand.',
      ask: 'What will R23 do? And R45?',
    },
    {
      minutes: 5,
      what: 'The turn',
      at: 'the-card-and-the-turn/past-the-last-needle',
      show: 'The mark beyond the last needle. Let them hear the click on a real machine.',
      ask: 'Which row is read on the way back?',
    },
    {
      minutes: 15,
      what: 'Strips take turns',
      at: 'rockers-and-strips/three-share-one',
      show: 'One strip along the whole bed, then the timing chart.',
      ask: 'How many needles does strip 7 hold at this moment?',
    },
    {
      minutes: 12,
      what: 'Name the part',
      at: 'when-a-part-fails/turned-round',
      show: 'Every eighth, every twenty-fourth, one, all, one way only.',
      ask: 'Which part is there that many of, works that way, and depends on speed?',
    },
    {
      minutes: 8,
      what: 'Two cards and an order',
      at: 'on-the-bench/two-cards',
      show: 'The card with every hole and the card with none. Hand out the fault chart.',
      ask: 'What do you check first, and what does it cost?',
    },
  ],
}

const day: Course = {
  minutes: 420,
  stretches: [
    {
      minutes: 20,
      what: 'Safety, and a machine laid open',
      at: 'on-the-bench/before-you-touch',
      show: 'Read the cautions below aloud. Name each part on the open machine and in the picture.',
      ask: 'What here can hurt you, and what can you hurt?',
    },
    {
      minutes: 35,
      what: 'The whole journey',
      at: 'the-whole-journey/a-bed-and-a-card',
      show: 'All of the chapter, with its questions.',
      ask: 'Where does the push stop, and which needles need that part?',
    },
    {
      minutes: 25,
      what: 'Card and turn',
      at: 'the-card-and-the-turn/rows-and-columns',
      show: 'Each pair marks row 1 and column 1 on a card, and turns short on purpose.',
      ask: 'Which row does the fabric show, and which one lies over the pins?',
    },
    { minutes: 15, what: 'Pause', show: 'Cards and parts stay out on the table.' },
    {
      minutes: 25,
      what: 'Feeler pins',
      at: 'feeler-pins/nothing-cannot-push',
      show: 'Two heights and an edge between them. Then wear that shows nothing.',
      ask: 'How can a worn machine work perfectly?',
    },
    {
      minutes: 25,
      what: 'Sweep and belt',
      at: 'the-sweep-and-the-belt/who-moves-when',
      show: 'The timing chart, and the belt three and eight needles out.',
      ask: 'Is eight out worse than three?',
    },
    {
      minutes: 35,
      what: 'Rockers and strips',
      at: 'rockers-and-strips/from-a-reader-to-a-bed',
      show: 'Strips taking turns. Then push every strip of the open machine with one fingertip, its plug out.',
      ask: 'How can one strip serve many needles?',
    },
    { minutes: 60, what: 'Lunch', show: 'Plugs stay out, solvent stays shut.' },
    {
      minutes: 20,
      what: 'The hold',
      at: 'the-hold/who-is-pressed',
      show: 'Strip says now, presser says here. Exchange two needles on a real bed.',
      ask: 'Catch or needle: how do you find out with the covers on?',
    },
    {
      minutes: 20,
      what: 'The gates',
      at: 'the-cam-gate/two-heights',
      show: 'The two walls, and the underside of a carriage.',
      ask: 'Why does a fault vanish when you push slowly?',
    },
    {
      minutes: 20,
      what: 'From a row to a fabric',
      at: 'a-row-then-a-fabric/set-out',
      show: 'A real piece with a fault. Count across, then up.',
      ask: 'In which pass was this stitch sorted?',
    },
    { minutes: 15, what: 'Pause', show: 'Lay out the worksheets.' },
    {
      minutes: 35,
      what: 'When a part fails',
      at: 'when-a-part-fails/turned-round',
      show: 'The pattern names the part. In pairs: one worksheet, then its answers.',
      ask: 'What would you see if two parts were broken?',
    },
    {
      minutes: 45,
      what: 'On the bench, in pairs',
      at: 'on-the-bench/settings-and-card',
      show: 'A machine with a fault that you have set, the check list, the two cards. Covers last.',
      ask: 'What did you see, what will you check next, and why that?',
    },
    {
      minutes: 15,
      what: 'Class quiz',
      at: 'when-a-part-fails/worn-out',
      show: 'The questions of a chapter, large, from the keys’ help. Let them answer by letter.',
      ask: 'Who can give the reason?',
    },
    {
      minutes: 10,
      what: 'Proof, and an honest end',
      at: 'on-the-bench/prove-it',
      show: 'Prove it row by row, both ways. Then when to stop.',
      ask: 'What do you tell the customer, in two sentences?',
    },
  ],
}

/** The courses of the teacher's guide. */
export const courses = { hour, day } as const

export type CourseName = keyof typeof courses

/** When each stretch of a course begins, in minutes from its beginning. */
export const beginnings = ({ stretches }: Course): number[] => {
  let time = 0
  return stretches.map(({ minutes }) => {
    time += minutes
    return time - minutes
  })
}
