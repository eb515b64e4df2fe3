// Links to sessions of finding a fault as they may have been kept or sent. Each keeps its meaning in every later version
// of this site: lines are added here, never changed and never taken out.

/** A session's link, and what it says of its passes, its checks and its finding. */
export interface GoldenSession {
  readonly text: string
  readonly passes: readonly {
    readonly card: string
    readonly row: number | null
    readonly way: 1 | -1
    readonly speed: number
    /** Which pass it was, where the link says so. */
    readonly pass?: number
    /** Needles by mark, in names; those not named are right. */
    readonly marked: Readonly<Record<string, readonly string[]>>
  }[]
  readonly checked: readonly string[]
  readonly finding: readonly string[]
  readonly isRough?: boolean
  readonly practice?: number
  readonly deal?: number
  readonly level?: number
  /** The needle of column 1 among R1 to R24; R1 where it is left out. */
  readonly first?: string
  /** What was measured of the machine; nothing where it is left out. */
  readonly own?: Readonly<Record<string, number>>
  /** What the machine's owner answered. */
  readonly intake?: readonly string[]
  /** The canonical form where that differs from the link itself. */
  readonly canonical?: string
  /** How many things the page has to say about it; none where it is left out. */
  readonly said?: number
}

export const goldenSessions: readonly GoldenSession[] = [
  {
    text: 'pass=1.right.500.p9.wR3&pass=2.left.900.p10&card=x.____AAAA&pass=1.left.500.p2',
    passes: [
      { card: 'harbour-star', row: 1, way: 1, speed: 500, pass: 9, marked: { w: ['R3'] } },
      { card: 'harbour-star', row: 2, way: -1, speed: 900, pass: 10, marked: {} },
      { card: 'x.____AAAA', row: 1, way: -1, speed: 500, pass: 2, marked: {} },
    ],
    checked: [],
    finding: [],
  },
  {
    text: 'pass=1.right.500.p4.uR3&pass=2.left.500&pass=3.right.500.p0',
    passes: [
      { card: 'harbour-star', row: 1, way: 1, speed: 500, marked: { u: ['R3'] } },
      { card: 'harbour-star', row: 2, way: -1, speed: 500, marked: {} },
      { card: 'harbour-star', row: 3, way: 1, speed: 500, marked: {} },
    ],
    checked: [],
    finding: [],
    canonical: 'pass=1.right.500.uR3&pass=2.left.500&pass=3.right.500',
    said: 1,
  },
  {
    text: 'pass=1.right.500',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
  },
  {
    text: 'pass=1.right.500.wR3-R19x8_R40.uL1.nR98-R100&pass=2.left.1500&card=blank&pass=1.right.100.wL100&check=retainer&check=strips.strip.3.seized&found=strip.3.seized',
    passes: [
      {
        card: 'harbour-star',
        row: 1,
        way: 1,
        speed: 500,
        marked: { w: ['R3', 'R11', 'R19', 'R40'], u: ['L1'], n: ['R98', 'R99', 'R100'] },
      },
      { card: 'harbour-star', row: 2, way: -1, speed: 1500, marked: {} },
      { card: 'blank', row: 1, way: 1, speed: 100, marked: { w: ['L100'] } },
    ],
    checked: ['retainer', 'strips strip.3.seized'],
    finding: ['strip.3.seized'],
  },
  {
    text: 'marks=rough&card=none&pass=0.left.500.wL97&card=x.____AAAA&pass=2.right.500&found=belt.timing%3D8&found=pin.5.low',
    passes: [
      { card: 'none', row: null, way: -1, speed: 500, marked: { w: ['L97'] } },
      { card: 'x.____AAAA', row: 2, way: 1, speed: 500, marked: {} },
    ],
    checked: [],
    finding: ['belt.timing=8', 'pin.5.low'],
    isRough: true,
  },
  {
    text: 'practice=7&pass=1.right.500',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
    practice: 7,
  },
  {
    text: 'first=R13&pass=1.right.500.wR15',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: { w: ['R15'] } }],
    checked: [],
    finding: [],
    first: 'R13',
  },
  {
    text: 'pass=2.left.900.wL3&first=L12&found=strip.3.seized',
    passes: [{ card: 'harbour-star', row: 2, way: -1, speed: 900, marked: { w: ['L3'] } }],
    checked: [],
    finding: ['strip.3.seized'],
    first: 'R13',
    canonical: 'first=R13&pass=2.left.900.wL3&found=strip.3.seized',
  },
  {
    text: 'first=R5&first=R6&pass=1.right.500',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
    first: 'R6',
    canonical: 'first=R6&pass=1.right.500',
    said: 1,
  },
  {
    text: 'pass=1.right.500&asked=stood.yes&asked=came.suddenly&asked=settings.confirmed',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
    intake: ['stood.yes', 'came.suddenly', 'settings.confirmed'],
  },
  {
    text: 'asked=opened.yes&asked=plain.badly&pass=1.right.500.wR3&found=strip.3.seized',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: { w: ['R3'] } }],
    checked: [],
    finding: ['strip.3.seized'],
    intake: ['plain.badly', 'opened.yes'],
    canonical: 'pass=1.right.500.wR3&asked=plain.badly&asked=opened.yes&found=strip.3.seized',
  },
  {
    text: 'pass=1.right.500&asked=came.slowly&asked=came.suddenly&asked=stood.no',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
    intake: ['stood.no', 'came.suddenly'],
    canonical: 'pass=1.right.500&asked=stood.no&asked=came.suddenly',
    said: 1,
  },
  {
    text: 'deal=5&pass=1.right.500',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
    deal: 5,
  },
  {
    text: 'deal=12&level=3&pass=1.right.500&pass=2.left.500',
    passes: [
      { card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} },
      { card: 'harbour-star', row: 2, way: -1, speed: 500, marked: {} },
    ],
    checked: [],
    finding: [],
    deal: 12,
    level: 3,
  },
  {
    text: 'level=2&deal=7&practice=3&pass=1.right.500',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
    practice: 3,
    deal: 7,
    level: 2,
    canonical: 'practice=3&deal=7&level=2&pass=1.right.500',
  },
  {
    text: 'own=1_pitch-5_gate1-0.6&pass=1.right.500.wR3',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: { w: ['R3'] } }],
    checked: [],
    finding: [],
    own: { pitch: 5, gate1: 0.6 },
  },
  {
    text: 'pass=1.right.500.wL30_R101.nR30&found=needle.R30.gone&own=1_bed-60&check=needle.needle.L31.bent',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: { w: ['L30'], n: ['R30'] } }],
    checked: [],
    finding: ['needle.R30.gone'],
    own: { needles: 60 },
    canonical: 'own=1_bed-60&pass=1.right.500.wL30.nR30&found=needle.R30.gone',
    said: 2,
  },
  {
    text: 'first=R3&own=1_bed-250_pitch-99&pass=1.right.500.wL125-R125x24',
    passes: [
      {
        card: 'harbour-star',
        row: 1,
        way: 1,
        speed: 500,
        marked: {
          w: ['L125', 'L101', 'L77', 'L53', 'L29', 'L5', 'R20', 'R44', 'R68', 'R92', 'R116'],
        },
      },
    ],
    checked: [],
    finding: [],
    first: 'R3',
    own: { needles: 250, pitch: 10 },
    canonical: 'first=R3&own=1_bed-250_pitch-10&pass=1.right.500.wL125-R116x24',
    said: 1,
  },
  {
    text: 'deal=5&own=1_pitch-5&pass=1.right.500',
    passes: [{ card: 'harbour-star', row: 1, way: 1, speed: 500, marked: {} }],
    checked: [],
    finding: [],
    deal: 5,
    canonical: 'deal=5&pass=1.right.500',
    said: 1,
  },
]
