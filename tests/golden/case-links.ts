// Links to cases as they may have been given to customers. Each keeps its meaning in every later version of this site:
// lines are added here, never changed and never taken out.

/** A case's link, and what it says: its title, its note, its faults, and the rest as a state's own text. */
export interface GoldenCase {
  readonly text: string
  readonly title: string
  readonly note: string
  readonly faults: readonly string[]
  /** The state without faults and note, in the form of a state's link. */
  readonly rest: string
  /** What was done, how it was after the work, and what was left as it is; nothing of it before the work. */
  readonly mended?: {
    readonly done: string
    readonly after: 'mended' | { readonly shown: number; readonly faults: number }
    readonly left: readonly string[]
  }
}

export const goldenCases: readonly GoldenCase[] = [
  { text: 'end=1', title: '', note: '', faults: [], rest: '' },
  {
    text: 'title=Mrs+Bell%2C+grey+machine&pass=7&at=R12.5&break=strip.3.seized&note=Cleaning%2C+then+it+knits+again.&end=1',
    title: 'Mrs Bell, grey machine',
    note: 'Cleaning, then it knits again.',
    faults: ['strip.3.seized'],
    rest: 'pass=7&at=R12.5',
  },
  {
    text: 'title=%C3%9Cber+50+%25+%26+more+%3D+fine&card=swell&pass=4&break=belt.timing%3D8&break=needle.R12.gone&speed=800&wear=0.25&seed=7&needles=L40-R40&note=Two+things%3A%0A1.+belt%0A2.+needle&end=1',
    title: 'Über 50 % & more = fine',
    note: 'Two things:\n1. belt\n2. needle',
    faults: ['belt.timing=8', 'needle.R12.gone'],
    rest: 'card=swell&pass=4&speed=800&wear=0.25&seed=7&needles=L40-R40',
  },
  {
    text: 'card=x.____AAAA&break=retainer.worn%3D12&note=%F0%9F%A7%B6+new+bar&end=1',
    title: '',
    note: '🧶 new bar',
    faults: ['retainer.worn=12'],
    rest: 'card=x.____AAAA',
  },
  {
    text: 'pass=2&at=L40&break=strip.3.seized&break=strip.6.seized&note=Run+it+monthly.&done=Cleaned+and+oiled+two+strips.&after=1243.1269&end=1',
    title: '',
    note: 'Run it monthly.',
    faults: ['strip.3.seized', 'strip.6.seized'],
    rest: 'pass=2&at=L40',
    mended: {
      done: 'Cleaned and oiled two strips.',
      after: { shown: 1243, faults: 1269 },
      left: [],
    },
  },
  {
    text: 'title=Grey+machine&break=needle.R12.bent&break=presser.right.worn%3D0.8&done=A+new+needle.%0AThe+presser+waits.&after=mended&left=presser.right.worn%3D0.8&end=1',
    title: 'Grey machine',
    note: '',
    faults: ['needle.R12.bent', 'presser.right.worn=0.8'],
    rest: '',
    mended: {
      done: 'A new needle.\nThe presser waits.',
      after: 'mended',
      left: ['presser.right.worn=0.8'],
    },
  },
  {
    text: 'break=catch.L7.broken&after=40.1270&end=1',
    title: '',
    note: '',
    faults: ['catch.L7.broken'],
    rest: '',
    mended: { done: '', after: { shown: 40, faults: 1270 }, left: [] },
  },
]
