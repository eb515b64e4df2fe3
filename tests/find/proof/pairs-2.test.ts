import { provePairs } from './pairs.ts'

provePairs([4, 5, 6])
