import { runCheck } from '../makers/check.ts'
import { twoFaults } from '../makers/faults-two.ts'
import { apartAsked } from '../makers/number-apart.ts'
import { thickOil } from '../makers/oil-thick.ts'
import { anyPart, atSpeed } from '../makers/part-any.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  apart: apartAsked,
  two: twoFaults,
  oil: thickOil,
  speed: atSpeed,
  part: anyPart,
  check: runCheck,
}
