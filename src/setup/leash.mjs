// Ends this process when the one that started it is gone, however that one ended.
// Loaded by run.mjs and, with `node --import`, by every server it starts, so none is left behind.

const parent = process.ppid

function parentLives() {
  if (process.ppid !== parent) return false
  try {
    process.kill(parent, 0)
    return true
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM'
  }
}

setInterval(() => {
  if (!parentLives()) process.kill(process.pid, 'SIGTERM')
}, 500).unref()
