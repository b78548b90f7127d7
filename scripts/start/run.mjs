import { buildWhatHasChanged } from '../prepare/build.mjs';
import { installWhatIsMissing } from '../prepare/install.mjs';
import { inRoot } from '../prepare/places.mjs';
import { endPrograms } from '../prepare/process.mjs';
import { Trouble, withoutStackTraces } from '../prepare/trouble.mjs';
import { startChild, stopChild } from './child.mjs';
import { readOptions } from './options.mjs';
import { demandFreePort } from './port.mjs';

const MOUND = 'north-1';
const READY_WITHIN_MS = 30_000;
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'];

/** @param {string[]} args what stands behind `npm start --` */
export function run(args) {
  return withoutStackTraces(async () => {
    const options = readOptions(args);
    if (options.kind === 'help') {
      process.stdout.write(options.text);
      return;
    }
    await start(options);
  });
}

async function start(options) {
  const running = [];
  const stopAll = stopOnSignal(running);
  await demandFreePort(options.port, options.host);
  await installWhatIsMissing();
  await buildWhatHasChanged();

  const server = startChild('server', inRoot('dist', 'node', 'server', 'main.js'), serverArgs(options));
  running.push(server);
  let ready;
  try {
    ready = await readiness(server);
  } catch (trouble) {
    await stopAll();
    throw trouble;
  }
  if (options.simulation !== null) running.push(startMound(options.simulation, ready));
  printAddresses(options, ready);

  const how = await server.ended;
  if (stopAll.begun) return;
  await stopAll();
  throw new Trouble(`The server stopped by itself (${how}); its last words are above, and what it acknowledged is safe in ${options.data}.`);
}

const serverArgs = ({ port, host, data, passphraseFile, tls, cert, key }) => [
  '--port', String(port), '--host', host, '--data', data,
  ...(passphraseFile === null ? [] : ['--passphrase-file', passphraseFile]),
  ...(tls ? ['--tls'] : []),
  ...(cert === null ? [] : ['--cert', cert, '--key', key]),
];

/** Resolves with what the server says when it can be used; rejects with its own sentence when it cannot start. */
function readiness({ child, ended }) {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Trouble(`The server was not ready within ${READY_WITHIN_MS / 1000} s; its last words are above.`)), READY_WITHIN_MS);
    const settle = (settled, value) => {
      clearTimeout(timer);
      settled(value);
    };
    child.on('message', (message) => {
      if (message?.kind === 'ready') settle(resolve, message);
      if (message?.kind === 'failed') settle(reject, new Trouble(message.sentence));
    });
    ended.then((how) => settle(reject, new Trouble(`The server ended before it was ready (${how}); its last words are above.`)));
  });
}

function startMound({ intervalS, seed }, { address, tokenFile }) {
  const device = `${address.replace(/^http/, 'ws')}/device`;
  const args = ['--url', device, '--token-file', tokenFile, '--mound', MOUND, '--seed', String(seed), '--interval', String(intervalS)];
  const mound = startChild('simulator', inRoot('dist', 'node', 'simulators', 'main.js'), args);
  mound.ended.then((how) => {
    if (!mound.stopping) process.stderr.write(`The simulated mound stopped by itself (${how}); the server goes on without it.\n`);
  });
  return mound;
}

function printAddresses({ data, simulation }, { address, tokenFile, exposed }) {
  const mound = simulation === null ? 'no simulated mound' : `a simulated mound throws every ${simulation.intervalS} s, seed ${simulation.seed}`;
  console.log(`
Offpace is ready: ${mound}.

  Wall      ${address}/wall/${MOUND}
  Bench     ${address}/bench/${MOUND}
  Glance    ${address}/glance/${MOUND}
  Playback  ${address}/playback

  Throws are kept in ${data}; on this machine the token for devices is in ${tokenFile}.
${exposed === null ? '  Only this machine reaches it, and whoever sits here is coach.' : whatIsExposed(exposed)}
  Ctrl-C stops everything.
`);
}

/** Whoever opens the server to a building shall see what that means. */
function whatIsExposed({ addresses, encrypted, fingerprint }) {
  return `
  Everybody in this network reaches it at ${addresses.join(' and ')}.
  To everybody it shows the door: where coaches sign in by the passphrase${fingerprint === null ? '' : ', and the certificate that phones accept'}.
  Athletes come in by a code that the coach asks for, screens by a link, devices by the token of their mound; each may do that one thing.
  ${encrypted ? `It is encrypted.${fingerprint === null ? '' : ` Phones accept its certificate at /certificate; its fingerprint is\n  ${fingerprint}`}` : 'NOT ENCRYPTED: passphrase and records can be read by others in this network. Start with --tls, or with --cert and --key.'}
`;
}

/** The last started is stopped first: a mound before the server that it throws to. */
function stopOnSignal(running) {
  const stopAll = async () => {
    if (stopAll.begun) return;
    stopAll.begun = true;
    let clean = true;
    for (const started of running.toReversed()) {
      started.stopping = true;
      clean = (await stopChild(started)) && clean;
    }
    if (!clean) process.stderr.write('A program did not stop when asked and was killed.\n');
  };
  stopAll.begun = false;
  const onSignal = async () => {
    if (stopAll.begun) return;
    console.log('Stopping …');
    endPrograms();
    await stopAll();
    console.log('Stopped.');
    process.exit(0);
  };
  for (const signal of SIGNALS) process.on(signal, onSignal);
  if (process.env.npm_lifecycle_event !== undefined) whenOrphaned(onSignal);
  return stopAll;
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
