/** A reason to stop that needs one clear sentence and no stack. */
export class Stop extends Error {}

/**
 * Tells what the set-up does, on standard error: standard output belongs to the command.
 * @param {string} text
 */
export function say(text) {
  process.stderr.write(`${text}\n`)
}

/**
 * The title of a step, on standard output among the steps' own output.
 * @param {string} text
 */
export function title(text) {
  process.stdout.write(`\n— ${text}\n`)
}
