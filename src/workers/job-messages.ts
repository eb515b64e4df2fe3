import type { Decision, Prices } from '../find/decide.ts'
import type { Plan } from '../find/plan.ts'
import type { ProofPasses, ProofQuestion } from '../find/prove.ts'
import type { Statement } from '../find/statement.ts'
import type { CardAndPasses, Query } from '../find/query.ts'
import type { RepairId } from '../find/repairs.ts'

/** What a job asks of its worker, each with its answer. */
export interface JobAsks {
  readonly decide: {
    readonly asks: { readonly query: Query; readonly prices: Prices | null }
    readonly gets: Decision
  }
  readonly plan: {
    readonly asks: { readonly query: Query; readonly ticked: readonly RepairId[] }
    readonly gets: Plan
  }
  readonly prove: { readonly asks: ProofQuestion; readonly gets: ProofPasses }
  readonly state: { readonly asks: CardAndPasses; readonly gets: Statement }
}
export type JobAsk = keyof JobAsks

/** A question to the worker; its answer comes with the same number. */
export type JobQuestion = {
  [Ask in JobAsk]: { readonly id: number; readonly ask: Ask; readonly about: JobAsks[Ask]['asks'] }
}[JobAsk]

export interface JobAnswer {
  readonly id: number
  readonly answer: JobAsks[JobAsk]['gets']
}
