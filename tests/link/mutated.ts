import fc from 'fast-check'
import { write } from '@/link/write.ts'
import { golden } from '../golden/links.ts'
import { faultIds, states } from './arbitraries.ts'
import { library } from './library.ts'

const keys = [
  'v',
  'card',
  'pass',
  'at',
  'break',
  'speed',
  'wear',
  'seed',
  'needles',
  'first',
  'own',
  'note',
  'done',
  'after',
  'left',
  'title',
  'end',
  'view',
  'found',
  '__proto__',
  'Pass',
  '',
]

/** Any 16-bit characters, halves of characters among them. */
const anything = fc
  .array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 60 })
  .map((codes) => String.fromCharCode(...codes))

const spiteful = fc.constantFrom(
  ...['-1', '0', '1e9', '9'.repeat(50), 'NaN', 'Infinity', '-0', '0x10', '1.5', '0.00004', ' 1', '1,5', '٣'],
  ...[
    'L0',
    'R0',
    'R0.00001',
    'L100',
    'R100',
    'R101',
    'L125',
    'L126-R125',
    'R1000',
    'r12',
    'L12.',
    'R12.3456789',
    'R1-L1',
    'L1-R1-R2',
  ],
  ...['x.', 'x.A', 'x.AAAAA', 'x.????', `x.${'_'.repeat(804)}`, 'none', 'None', 'two-rows', 'constructor'],
  ...[
    '<script>alert(1)</script>',
    'javascript:alert(1)',
    '%',
    '%zz',
    '%00',
    '\u2028',
    '\u202e',
    '\ud800',
    '"><i>',
  ],
  ...['mended', '7.9', '9.7', '0.0', 'front', 'turned.1.2', '30.-20.1', '1e9.1.1', 'NaN.0.1'],
  ...['1_bed-61', '1_bed-60', '1_bed-250_bed-1e9', '1_bed--2', '1_bed-', '1_bed-0x50_pitch-NaN'],
  ...[
    '1_gateLag-6_bed-Infinity',
    '1_toString-3___',
    '1_needles-160',
    'needle.L125.bent',
    'catch.R126.broken',
  ],
  ...['strip.9.over', 'strip.0.seized', 'strip.3', 'strip.3.slow=0', 'sweep.worn', 'sweep.worn=', 'toString'],
  ...['card.torn.3.1', 'card.torn.200.24', 'pawl.left=1', `needle.${'L'.repeat(999)}.bent`, 'gate.1.low=99'],
)

const values = fc.oneof(anything, spiteful, faultIds(200), fc.integer().map(String), fc.double().map(String))

const pairs = fc
  .array(fc.tuple(fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...keys) }, anything), values))
  .map((all) =>
    all.map(([key, value]) => `${key}=${encodeURI(value.replace(/\p{Cs}/gu, '\ufffd'))}`).join('&'),
  )

const good = fc.oneof(
  states.map((state) => write(state, library)),
  fc.constantFrom(...golden.map(({ text }) => text)),
)

/** Good texts with a few characters taken out, put in or changed. */
const scratched = fc
  .tuple(good, fc.array(fc.tuple(fc.nat(400), fc.nat(3), fc.string({ maxLength: 3 })), { maxLength: 5 }))
  .map(([text, cuts]) =>
    cuts.reduce((now, [place, gone, put]) => {
      const at = place % (now.length + 1)
      return now.slice(0, at) + put + now.slice(at + gone)
    }, text),
  )

/** Texts of every make: good, scratched, put together from bad parts, two run into one, and noise. */
export const mutated: fc.Arbitrary<string> = fc.oneof(
  scratched,
  pairs,
  fc.tuple(good, pairs).map(([one, other]) => `#${one}&${other}`),
  fc.tuple(good, good).map(([one, other]) => `${one}&${other}`),
  anything,
)
