import { existsSync } from 'node:fs';
import path from 'node:path';
import { inRoot } from '../prepare/places.mjs';
import { runNpm, runProgram } from '../prepare/process.mjs';
import { showOutput, Trouble } from '../prepare/trouble.mjs';

/** npm says its reason first. */
const SHOWN_LINES = 6;

/**
 * The program of a Node of this line: the one that OFFPACE_NODE_<line> names, or one that npm has as a package, kept in dist/nodes.
 * @param {string} line such as "20.19" or "22"
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {Promise<{ program: string, version: string }>}
 * @throws {Trouble} that says what is needed, when there is none
 */
export async function haveNode(line, env = process.env) {
  const variable = `OFFPACE_NODE_${line.replace('.', '_')}`;
  const named = env[variable];
  const program = named === undefined || named === '' ? await fromNpm(line, variable) : named;
  const { code, output } = await runProgram(program, ['--version']);
  const version = output.trim();
  if (code !== 0) throw new Trouble(`${program} cannot be started as Node ${line} (${version}); set ${variable} to the path of one.`);
  if (!isOfLine(version, line)) throw new Trouble(`${program} is Node ${version}, and Node ${line} is wanted; set ${variable} to the path of one.`);
  return { program, version };
}

/**
 * @param {string} version as `node --version` says it
 * @param {string} line the first numbers of it
 */
export function isOfLine(version, line) {
  return `${version}.`.startsWith(`v${line}.`);
}

async function fromNpm(line, variable) {
  const folder = inRoot('dist', 'nodes', line);
  const name = `node-${process.platform}-${process.arch}`;
  const program = path.join(folder, 'node_modules', name, 'bin', 'node');
  if (existsSync(program)) return program;
  console.log(`Fetching Node ${line}: the package ${name} of npm.`);
  const { code, output } = await runNpm(['install', '--prefix', folder, '--no-save', '--no-fund', '--no-audit', '--no-package-lock', `${name}@${line}`]);
  if (code === 0 && existsSync(program)) return program;
  showOutput(output, SHOWN_LINES);
  throw new Trouble(`There is no Node ${line} here and npm has none for ${process.platform} ${process.arch}; install one and set ${variable} to its path.`);
}
