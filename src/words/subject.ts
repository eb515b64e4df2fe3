import { needleName } from '../mechanism/bed.ts'
import type { Frame } from '../mechanism/frame.ts'
import { type Part, partId } from '../mechanism/part.ts'
import type { Run } from '../mechanism/pass.ts'
import { describeFrame } from './frame-description.ts'
import { describePart } from './part-description.ts'
import { partName } from './parts.ts'

/** What a part's flag has on it: a needle's name, or the part's without its article. */
export const flagWords = (part: Part): string =>
  part.kind === 'needle' ? needleName(part.needle) : partName(partId(part)).replace(/^the /, '')

/** What the part with the flag is doing now, as a sentence under the machine. */
export const subjectSentence = (run: Run, frame: Frame, part: Part): string =>
  `With the flag: ${flagWords(part)}. ${describePart(run, frame, part).doing}`.trim()

/** What happens now in a few sentences, first to the part with the flag, unless the others name that part anyway. */
export const describeWith = (run: Run, frame: Frame, part: Part | null): string => {
  const words = describeFrame(frame)
  if (part === null) return words
  const isNamed = new RegExp(`\\b${flagWords(part)}\\b`, 'i').test(words)
  return isNamed ? words : `${subjectSentence(run, frame, part)} ${words}`
}
