import { fork } from 'node:child_process';
import { createInterface } from 'node:readline';
import { ROOT } from '../prepare/places.mjs';

const STOP_WITHIN_MS = 8_000;

/**
 * Starts one of our own programs, with every line it says under its name.
 * It gets its own process group: Ctrl-C reaches only us, and we stop the programs in their order.
 * @param {string} name
 * @param {string} script
 * @param {string[]} args
 */
export function startChild(name, script, args) {
  const child = fork(script, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe', 'ipc'], detached: process.platform !== 'win32' });
  passOn(name, child.stdout, process.stdout);
  passOn(name, child.stderr, process.stderr);
  const ended = new Promise((resolve) => {
    child.once('exit', (code, signal) => resolve(signal === null ? `exit code ${code}` : `signal ${signal}`));
    child.once('error', (error) => resolve(error.message));
  });
  return { child, ended };
}

function passOn(name, from, to) {
  const label = name.padEnd(9);
  createInterface({ input: from }).on('line', (line) => to.write(`${label} | ${line}\n`));
}

/**
 * Asks a program to stop and waits for its end.
 * @param {ReturnType<typeof startChild>} started
 * @returns {Promise<boolean>} false when it had to be killed
 */
export async function stopChild({ child, ended }) {
  child.kill('SIGTERM');
  let timer;
  const tooLate = new Promise((resolve) => {
    timer = setTimeout(() => resolve(null), STOP_WITHIN_MS);
  });
  const how = await Promise.race([ended, tooLate]);
  clearTimeout(timer);
  if (how !== null) return true;
  child.kill('SIGKILL');
  await ended;
  return false;
}
