export { createJobStore } from './job-store.ts'
export { randomId } from './random-id.ts'
export { openShelf } from './shelf.ts'
export { jobName } from './words.ts'
