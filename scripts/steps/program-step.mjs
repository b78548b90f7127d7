import { inRoot } from '../prepare/places.mjs';
import { endPrograms, runScript } from '../prepare/process.mjs';
import { Trouble } from '../prepare/trouble.mjs';

/**
 * Runs steps in order, says how long each took, and stops at the first that fails.
 * @param {[name: string, work: () => Promise<void>][]} steps
 * @throws {Trouble} that names the step
 */
export async function runSteps(steps) {
  const startedMs = performance.now();
  stopWhenTold();
  for (const [name, work] of steps) {
    const stepMs = performance.now();
    console.log(`\n── ${name}`);
    await work();
    console.log(`── ${name}: passed in ${secondsSince(stepMs)} s`);
  }
  console.log(`\nAll ${steps.length} steps passed in ${secondsSince(startedMs)} s.`);
}

/**
 * A step that runs a JavaScript program of ours or of an installed package and passes its words through.
 * @param {string} name
 * @param {string[]} script where it is, below the project's folder
 * @param {string[]} [args]
 * @param {() => NodeJS.ProcessEnv} [env] asked when the step begins
 * @returns {[string, () => Promise<void>]}
 */
export function programStep(name, script, args = [], env = () => process.env) {
  return [
    name,
    async () => {
      const { code } = await runScript(inRoot(...script), args, { show: true, env: env() });
      if (code !== 0) throw new Trouble(`\nThe step "${name}" failed (exit code ${code}); what it found stands above.`);
    },
  ];
}

function stopWhenTold() {
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => {
      endPrograms();
      process.stderr.write('Broken off.\n');
      process.exit(130);
    });
  }
}

const secondsSince = (ms) => ((performance.now() - ms) / 1000).toFixed(1);
