import { provePairs } from './pairs.ts'

provePairs([7, 8])
