// Starting other programs, the same way on every system.

import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

/** The top folder of the checkout, with a separator at its end. */
export const root = fileURLToPath(new URL("../", import.meta.url));

/**
 * @typedef {object} Outcome
 * @property {number} code exit code; 1 where a signal ended it or it could not be started
 * @property {string} output what it printed, both streams in the order they came; empty unless kept
 */

/**
 * @typedef {object} Manner
 * @property {boolean} [keep] collect the output instead of passing it on
 * @property {boolean} [aside] pass its output on as messages, so that standard output stays free for the program's own
 * @property {boolean} [shell] start through the system's shell (npm on Windows is a batch file)
 * @property {Record<string, string>} [env] added to the environment
 */

/**
 * Runs a program in the checkout and waits for its end. Never rejects.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {Manner} [manner]
 * @returns {Promise<Outcome>}
 */
export function run(program, args, { keep = false, aside = false, shell = false, env = {} } = {}) {
  return new Promise((resolve) => {
    let output = "";
    const child = spawn(program, args, {
      cwd: root,
      shell,
      env: { ...process.env, ...env },
      stdio: keep ? ["ignore", "pipe", "pipe"] : ["inherit", aside ? process.stderr : "inherit", "inherit"],
    });
    const collect = (/** @type {Buffer} */ bytes) => {
      output += bytes.toString();
    };
    child.stdout?.on("data", collect);
    child.stderr?.on("data", collect);
    child.on("error", (error) => resolve({ code: 1, output: output + error.message }));
    child.on("close", (code) => resolve({ code: code ?? 1, output }));
  });
}

/**
 * Runs a script of an installed package with this same Node.
 * @param {string} script path below node_modules
 * @param {readonly string[]} args
 * @param {Manner} [manner]
 */
export function runTool(script, args, manner) {
  return run(process.execPath, [`${root}node_modules/${script}`, ...args], manner);
}

/**
 * Runs npm: the one that started us where there is one, else the one on the path.
 * @param {readonly string[]} args
 */
export function runNpm(args) {
  const started = process.env.npm_execpath;
  if (started !== undefined && /npm-cli\.c?js$/.test(started)) {
    return run(process.execPath, [started, ...args], { aside: true });
  }
  return run("npm", args, { aside: true, shell: process.platform === "win32" });
}
