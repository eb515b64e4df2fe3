export { createClient } from './client.ts'
export { findingState } from './finding-state.ts'
export { queryOf } from './session-query.ts'
