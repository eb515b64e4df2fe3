import type { RankedAnswer } from '@/find/rank.ts'

/** The ids of an answer's ways, each way's joined. */
export const idsOf = ({ kind, ways }: RankedAnswer): string[] =>
  kind === 'faults'
    ? ways.map((way) =>
        way
          .map(({ id }) => id)
          .sort()
          .join(' + '),
      )
    : [kind]
