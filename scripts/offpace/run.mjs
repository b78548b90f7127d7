import { pathToFileURL } from 'node:url';
import { buildWhatHasChanged } from '../prepare/build.mjs';
import { installWhatIsMissing } from '../prepare/install.mjs';
import { inRoot, ROOT } from '../prepare/places.mjs';
import { endPrograms } from '../prepare/process.mjs';
import { withoutStackTraces } from '../prepare/trouble.mjs';

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/** @param {string[]} args the command and its options, as `offpace` takes them */
export async function run(args) {
  for (const signal of SIGNALS) process.on(signal, breakOff);
  await withoutStackTraces(async () => {
    await installWhatIsMissing();
    await buildWhatHasChanged();
  });
  for (const signal of SIGNALS) process.off(signal, breakOff);
  const throughNpm = process.env.npm_lifecycle_event !== undefined;
  // npm changes into the project's folder; what a person names is meant from where they stand.
  if (throughNpm && process.env.INIT_CWD !== undefined) process.chdir(process.env.INIT_CWD);
  if (throughNpm) whenOrphaned(() => process.kill(process.pid, 'SIGTERM'));
  const { runAsProgram } = await import(pathToFileURL(inRoot('dist', 'node', 'command', 'run.js')).href);
  await runAsProgram(args, ROOT);
}

function breakOff() {
  endPrograms();
  process.stderr.write('Broken off.\n');
  process.exit(130);
}

/** An npm that is ended from outside does not pass the signal on; all that we see of it is another parent. */
function whenOrphaned(stop) {
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(watch);
    stop();
  }, 500);
  watch.unref();
}
