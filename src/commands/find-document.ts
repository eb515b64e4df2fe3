import type { Finding } from '../find/case.ts'
import type { Suspect } from '../find/rank.ts'
import { checkWords } from '../words/checks.ts'
import { evidenceWords } from '../words/suspect-evidence.ts'

/** Answers less likely than this are left out, and the rest add up to 1. */
const least = 1e-6

/** A suspect's faults by their ids, two at once joined by a plus; none for a sound machine. */
const faultsOf = ({ is, ways }: Suspect): string[] =>
  is === 'unknown'
    ? ['unknown']
    : ways.map((way) =>
        way
          .map(({ id }) => id)
          .sort()
          .join(' + '),
      )

/** The JSON document of a finding, one line an answer and a check. */
export const findDocument = ({ suspects, next }: Finding): string => {
  const kept = suspects.filter(({ probability }) => probability >= least)
  const whole = kept.reduce((sum, { probability }) => sum + probability, 0)
  const ranked = kept.map((suspect) =>
    JSON.stringify({
      faults: faultsOf(suspect),
      probability: suspect.probability / whole,
      why: evidenceWords(suspect),
    }),
  )
  const checks = next.map(({ check, bits, minutes, opens }) =>
    JSON.stringify({ check: checkWords[check], bits: Math.round(bits * 1e4) / 1e4, minutes, opens }),
  )
  const list = (lines: readonly string[]): string => lines.map((line) => `\n    ${line}`).join(',')
  return `{ "ranked": [${list(ranked)}\n  ],\n  "next": [${list(checks)}\n  ] }\n`
}
