import { buildWhatHasChanged } from '../prepare/build.mjs';
import { installWhatIsMissing } from '../prepare/install.mjs';
import { withoutStackTraces } from '../prepare/trouble.mjs';
import { findOrInstallBroker } from './broker.mjs';
import { findOrInstallBrowser, findOrInstallShell } from './browser.mjs';
import { programStep, runSteps } from './program-step.mjs';

const VITEST = ['node_modules', 'vitest', 'vitest.mjs'];
const PLAYWRIGHT = ['node_modules', '@playwright', 'test', 'cli.js'];

let browser;
let shell;
const withBrowser = () => ({ ...process.env, OFFPACE_CHROMIUM: browser, ...(shell === null ? {} : { OFFPACE_HEADLESS_SHELL: shell }) });
const install = ['install', installWhatIsMissing];
const build = ['build', buildWhatHasChanged];
const find = [
  'browser',
  async () => {
    shell = await findOrInstallShell();
    browser = await findOrInstallBrowser();
    console.log(`Browser tests run in ${shell === null ? browser : `${shell}, those that need a whole browser in ${browser}`}`);
  },
];
const broker = ['MQTT broker', async () => console.log(`Tests of the MQTT adapter start ${await findOrInstallBroker()}`)];
const lint = [
  programStep('lint', ['node_modules', 'oxlint', 'bin', 'oxlint'], ['--deny-warnings']),
  programStep('house', ['scripts', 'house.mjs']),
  programStep('unused code', ['node_modules', 'knip', 'bin', 'knip.js'], ['--no-progress']),
];

/** Everything that has to be green, from nothing but a Node and a network. */
const EVERYTHING = [
  install,
  find,
  broker,
  programStep('types', ['node_modules', 'typescript', 'bin', 'tsc'], ['--noEmit', '-p', 'tsconfig.json']),
  ...lint,
  build,
  programStep('unit and integration tests', VITEST, ['run']),
  programStep('browser tests', PLAYWRIGHT, ['test'], withBrowser),
];

const PLANS = {
  test: EVERYTHING,
  lint: [install, ...lint],
  build: [install, build],
  prove: [
    install,
    find,
    build,
    programStep('long checks', VITEST, ['run', '--config', 'vitest.prove.config.ts']),
    programStep('screens in their other states, themes and languages', PLAYWRIGHT, ['test', '--config', 'playwright.prove.config.ts'], withBrowser),
    programStep('browser tests on a late line', PLAYWRIGHT, ['test', '--config', 'playwright.late.config.ts'], withBrowser),
  ],
  bench: [install, find, build, programStep('measurements', VITEST, ['run', '--config', 'vitest.bench.config.ts'], withBrowser)],
  screens: [install, find, build, programStep('pictures of the screens', PLAYWRIGHT, ['test', '--config', 'playwright.screens.config.ts'], withBrowser)],
  schemas: [install, build, programStep('schemas of the device protocol', ['scripts', 'schemas.mjs'])],
};

/** @param {keyof typeof PLANS} plan */
export const run = (plan) => withoutStackTraces(() => runSteps(PLANS[plan]));
