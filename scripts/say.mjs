// What the scripts tell the person at the terminal. Always on standard error: standard output belongs to the program.

/** @param {string} line */
export function say(line) {
  process.stderr.write(`${line}\n`);
}

/**
 * Ends the script with a message instead of a stack trace.
 * @param {string} message what is wrong and how to mend it
 * @returns {never}
 */
export function giveUp(message) {
  say(`\nOuterleaf: ${message}`);
  process.exit(2);
}

/**
 * A duration as people read it.
 * @param {number} milliseconds
 */
export function seconds(milliseconds) {
  return `${(milliseconds / 1000).toFixed(1)} s`;
}
