import { provePairs } from './pairs.ts'

provePairs([1, 2, 3])
