import { describe, expect, test } from 'vitest'
import type { Finding } from '@/find/finding.ts'
import { inferWhole } from '@/find/infer.ts'
import { mendableOf } from '@/find/mending.ts'
import { type PossibleMachine, possibleMachines } from '@/find/possible-machines.ts'
import { repairIds } from '@/find/repairs.ts'
import { type FaultId, faultId } from '@/mechanism/fault.ts'
import { randomCard } from './make.ts'
import { mixedPasses, notedQuery } from './noted.ts'

const card = randomCard(6, 17)
const passes = mixedPasses(card.length, 4)
const inferenceOf = (...ids: FaultId[]) => inferWhole(notedQuery(card, passes, ids))

const shareOf = (machines: readonly PossibleMachine[], isSo: (machine: PossibleMachine) => boolean): number =>
  machines.filter(isSo).length / machines.length

const drawn = 2000

/** How far a share of so many machines may be from its chance. */
const spread = (chance: number): number => 4 * Math.sqrt((chance * (1 - chance)) / drawn) + 0.02

describe('machines drawn from what is still possible', { timeout: 120_000 }, () => {
  test.each<[string, FaultId[]]>([
    ['a seized strip and a gone needle', ['strip.3.seized', 'needle.R20.gone']],
    ['a dead column and a bent needle', ['pin.5.low', 'needle.L40.bent']],
    ['a slow strip', ['strip.6.slow=400']],
    ['a carriage set to plain', ['carriage.plain']],
    ['a worn bar', ['retainer.worn=9']],
  ])('have each place wrong as often as the sums say: %s', (_, ids) => {
    const { finding, beds } = inferenceOf(...ids)
    const machines = possibleMachines(beds, drawn, 3)
    expect(finding.places.length).toBeGreaterThan(3)
    for (const { place, wrong } of finding.places) {
      const share = shareOf(machines, (machine) =>
        machine.some((one) => one.place === place && (one.mendedBy !== null || one.fault === null)),
      )
      expect(Math.abs(share - wrong), `${place}: ${share} beside ${wrong}`).toBeLessThan(spread(wrong))
    }
  })

  test('have each place wrong in the ways that each work mends', () => {
    const { finding, beds } = inferenceOf('needle.L40.bent', 'pin.5.low')
    const machines = possibleMachines(beds, drawn, 5)
    const mendable = mendableOf(finding)
    for (const repair of repairIds)
      for (const { place, chance } of mendable[repair]) {
        const share = shareOf(machines, (machine) =>
          machine.some((one) => one.place === place && one.mendedBy === repair),
        )
        expect(Math.abs(share - chance), `${repair} ${place}`).toBeLessThan(spread(chance))
      }
    expect(mendable.catches[0]!.place).toBe('needle.L40')
  })

  test('are the same for the same seed, and others for another', () => {
    const { beds } = inferenceOf('strip.3.seized')
    expect(possibleMachines(beds, 50, 8)).toEqual(possibleMachines(beds, 50, 8))
    expect(possibleMachines(beds, 50, 8)).not.toEqual(possibleMachines(beds, 50, 9))
  })

  test('have parts that wear has used up, which nothing mends', () => {
    // Far worn: a third of all columns pass nothing on, which no gummed reader does so evenly.
    const ids = Array.from({ length: 8 }, (_, n): FaultId => `rocker.${3 * n + 1}.worn=1.2`)
    const { finding, beds } = inferenceOf(...ids)
    expect(finding.wear.mean).toBeGreaterThan(0.5)
    const machines = possibleMachines(beds, 300, 2)
    const worn = machines.flat().filter(({ mendedBy, fault }) => mendedBy === null && fault !== null)
    expect(worn.length).toBeGreaterThan(0)
    for (const { place, fault } of worn) {
      expect(place).toMatch(/^column\./)
      expect(fault !== 'out' && fault !== null && faultId(fault)).toMatch(/^rocker\.\d+\.dead$/)
    }
  })

  test('of nothing seen have every place wrong as often as is common', () => {
    const { finding, beds }: { finding: Finding; beds: Parameters<typeof possibleMachines>[0] } = inferWhole(
      notedQuery(card, []),
    )
    const machines = possibleMachines(beds, drawn, 1)
    const strip = finding.places.find(({ place }) => place === 'strip.4')!
    const share = shareOf(machines, (machine) => machine.some(({ place }) => place === 'strip.4'))
    expect(Math.abs(share - strip.wrong)).toBeLessThan(spread(strip.wrong))
  })
})
