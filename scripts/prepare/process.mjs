import { spawn } from 'node:child_process';
import { ROOT } from './places.mjs';

const running = new Set();

/**
 * Runs a program to its end and keeps what it said, for the case that it fails.
 * @param {string} program
 * @param {string[]} args
 * @param {{ cwd?: string, env?: NodeJS.ProcessEnv, show?: boolean }} [options] show passes its output straight through
 * @returns {Promise<{ code: number, output: string }>} code 127 when the program cannot be started
 */
export function runProgram(program, args, { cwd = ROOT, env = process.env, show = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, { cwd, env, stdio: show ? 'inherit' : ['ignore', 'pipe', 'pipe'] });
    running.add(child);
    const said = [];
    child.stdout?.on('data', (piece) => said.push(piece));
    child.stderr?.on('data', (piece) => said.push(piece));
    const end = (code, output) => {
      running.delete(child);
      resolve({ code, output });
    };
    child.on('error', (error) => end(127, error.message));
    child.on('close', (code) => end(code ?? 1, Buffer.concat(said).toString()));
  });
}

/** Ends whatever runProgram has started and not yet seen the end of. */
export function endPrograms() {
  for (const child of running) child.kill();
}

/**
 * Runs a JavaScript program of an installed package under this very Node.
 * @param {string} script below the project's folder
 * @param {string[]} args
 * @param {{ env?: NodeJS.ProcessEnv, show?: boolean }} [options]
 */
export const runScript = (script, args, options) => runProgram(process.execPath, [script, ...args], options);

/**
 * Runs npm: the one that started us if there is one, otherwise the one on the PATH.
 * @param {string[]} args
 */
export function runNpm(args) {
  const ours = process.env.npm_execpath;
  if (ours !== undefined && /\.c?js$/.test(ours)) return runProgram(process.execPath, [ours, ...args]);
  return process.platform === 'win32' ? runProgram('cmd', ['/c', 'npm', ...args]) : runProgram('npm', args);
}
