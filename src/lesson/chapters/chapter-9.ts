import { runCheck } from '../makers/check.ts'
import { twoFaults } from '../makers/needles-two-faults.ts'
import { apartAsked } from '../makers/number-apart.ts'
import { thickOil } from '../makers/needles-oil.ts'
import { anyPart, atSpeed } from '../makers/part-makers.ts'
import type { Makers } from '../question.ts'

export const makers: Makers = {
  apart: apartAsked,
  two: twoFaults,
  oil: thickOil,
  speed: atSpeed,
  part: anyPart,
  check: runCheck,
}
