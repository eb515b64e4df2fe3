/** A stage of a service, in the order of the chapter on the bench. */
export interface WorkStage {
  readonly title: string
  /** Ids of the cautions that come before it. */
  readonly cautions: readonly string[]
  /** What to do, each with a box to tick. */
  readonly ticks: readonly string[]
  /** What to measure and write down. No value is beside it: somebody would set a real machine to it. */
  readonly measures: readonly string[]
}

/** The stages of a service. A test holds their order and their cautions against the chapter. */
export const stages: readonly WorkStage[] = [
  {
    title: 'Before you touch anything',
    cautions: ['lifting', 'unplug', 'mains'],
    ticks: [
      'Carried level, by two people; everything unplugged.',
      'The machine’s own manual is at hand, and comes before this list.',
      'The customer’s words, and what the last repair was, are written down.',
    ],
    measures: [],
  },
  {
    title: 'Settings, card, turns',
    cautions: ['notes', 'fingers'],
    ticks: [
      'The carriage is set to pattern, the belt engaged, the card off its lock, the needles in working position.',
      'The card is the right way round, straight, whole, joined into a loop and free to step.',
      'The carriage passes the turn mark at both ends, and the row number follows.',
      'One card row slowly and, once all runs freely, fast: to the right and to the left. A second card that is known to be good.',
    ],
    measures: ['Past the last needle to the turn mark'],
  },
  {
    title: 'Needles and retainer bar',
    cautions: ['hooks', 'dust'],
    ticks: [
      'The retainer bar drawn out: its padding is not flat, hard or sticky.',
      'Every needle looked at: hook, latch, butt, straight; bent and stiff ones exchanged while the bar is out.',
      'Bar back in; every butt pressed down: it comes up at once.',
    ],
    measures: [],
  },
  {
    title: 'Two test cards, without yarn; the pins',
    cautions: [],
    ticks: [
      'Every hole, a pass each way: every needle comes forward.',
      'None, a pass each way: no needle comes forward, but for end needles that a setting brings forward.',
      'What came out wrong is written down, needle by needle.',
      'Card out: all pins stand at one height, go down under a finger and come up.',
    ],
    measures: ['A pin through a hole, height', 'A pin stopped by card, height'],
  },
  {
    title: 'Under the carriage',
    cautions: [],
    ticks: [
      'Fluff and thread taken out; brushes and wheels turn.',
      'Presser and both gates: not worn, not loose, not bent, and the same for both ways.',
    ],
    measures: [
      'Dip of the presser, to the right',
      'Dip of the presser, to the left',
      'First gate below the rest line',
      'Second gate below the rest line',
    ],
  },
  {
    title: 'One cover, and the strips by hand',
    cautions: ['springs', 'old-plastic', 'force'],
    ticks: [
      'Photographed before it was opened; screws laid out in order.',
      'Each strip pushed a little: all feel the same, and each springs back at once by itself.',
    ],
    measures: ['Shift of a strip'],
  },
  {
    title: 'Hardened oil',
    cautions: ['solvents', 'plastics', 'oil'],
    ticks: [
      'Old oil taken off with little solvent, strips worked by hand until they spring back freely; the retainer bar out before it begins.',
      'All of it dried off; one thin film of fresh oil.',
    ],
    measures: [],
  },
  {
    title: 'Rockers, from outside',
    cautions: [],
    ticks: ['All rockers have the same play, as far as they can be reached.'],
    measures: ['Lost motion of a rocker'],
  },
  {
    title: 'Belt; card reader last of all',
    cautions: ['reader'],
    ticks: [
      'Belt and reader marked, with the carriage at a place that is written down.',
      'The belt is whole, and follows the carriage at once in both ways.',
      'The reader stays on, unless it is sure to go back.',
    ],
    measures: ['Play before the belt follows'],
  },
  {
    title: 'Prove it, and close',
    cautions: [],
    ticks: [
      'After every change the same test again.',
      'Every hole and none, then a whole card: both ways, slowly and then fast, bed compared with card row by row.',
      'Covers back, nothing left over; a trial piece knitted.',
      'If stages are past their limit or a part is no longer made: stopped, and the customer told what was measured. A machine that knits plain well is offered as a plain machine, whole.',
    ],
    measures: [],
  },
]
