import { opensMachine } from '../find/checks.ts'
import type { Finding } from '../find/infer.ts'
import type { NextLook } from '../find/next.ts'
import type { RankedAnswer } from '../find/rank.ts'
import { checkWords } from '../words/checks.ts'
import { evidenceWords } from '../words/suspect-evidence.ts'

/** An answer's faults by their ids, two at once joined by a plus; none for a sound machine. */
const faultsOf = ({ kind, ways }: RankedAnswer): string[] =>
  kind === 'unknown'
    ? ['unknown']
    : ways.map((way) =>
        way
          .map(({ id }) => id)
          .sort()
          .join(' + '),
      )

/** The JSON document of a finding and the next looks, one line an answer and a check. */
export const findDocument = ({ answers }: Finding, next: readonly NextLook[]): string => {
  const ranked = answers.map((answer) =>
    JSON.stringify({
      faults: faultsOf(answer),
      probability: answer.probability,
      why: evidenceWords(answer),
    }),
  )
  const checks = next.map((look) =>
    JSON.stringify({
      check: checkWords[look.check],
      bits: Math.round(look.bits * 1e4) / 1e4,
      minutes: look.minutes,
      opens: opensMachine(look),
    }),
  )
  const list = (lines: readonly string[]): string => lines.map((line) => `\n    ${line}`).join(',')
  return `{ "ranked": [${list(ranked)}\n  ],\n  "next": [${list(checks)}\n  ] }\n`
}
