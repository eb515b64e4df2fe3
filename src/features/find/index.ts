export { createClient } from './client.ts'
export { findingState } from './finding-state.ts'
export { checkedLines, seenWords } from './pass-line.ts'
export { queryOf } from './session-query.ts'
