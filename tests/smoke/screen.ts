import { type ChildProcess, spawn } from 'node:child_process'
import type { Readable } from 'node:stream'

/** A program that was started for a test. */
export interface Started {
  readonly end: () => Promise<void>
}

/** Ends a program, and waits until it has ended. */
export const ended = async (program: ChildProcess): Promise<void> => {
  if (program.exitCode !== null || program.signalCode !== null) return
  const exit = new Promise((done) => program.once('exit', done))
  program.kill()
  await exit
}

/**
 * Opens a screen in memory, for a browser that cannot do without one.
 * @returns its name, as the variable DISPLAY has it
 */
export const openScreen = async (): Promise<Started & { readonly display: string }> => {
  const screen = spawn(
    'Xvfb',
    ['-displayfd', '3', '-screen', '0', '1600x1200x24', '-nolisten', 'tcp', '-noreset'],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] },
  )
  const number = await new Promise<string>((done, fail) => {
    screen.once('error', fail)
    screen.once('exit', () => fail(new Error('Xvfb ended before it had a screen')))
    ;(screen.stdio[3] as Readable).once('data', (text: Buffer) => done(text.toString().trim()))
  })
  return { display: `:${number}`, end: () => ended(screen) }
}
