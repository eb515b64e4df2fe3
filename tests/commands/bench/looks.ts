import type { Look } from '@/commands/bench/machine.ts'
import { wayOfPass } from '@/mechanism/bed.ts'

/** A look at a row of a card in its own pass, at the usual speed. */
export const lookAt = (pass: number): Look => ({
  row: pass,
  way: wayOfPass(pass),
  speed: 500,
  pass,
  modelPass: pass,
})
