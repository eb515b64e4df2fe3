export { createJobStore } from './job-store.ts'
export { openShelf } from './shelf.ts'
export { jobName } from './words.ts'
