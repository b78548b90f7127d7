import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { startServer, type RunningServer, type ServerOptions } from './serve.ts';
import { StartFailure } from './start-failure.ts';

/** The program: reads what was typed, starts the server, says that it is ready or why not, and stops when asked to. */
async function run(): Promise<void> {
  const server = await startServer({ ...typed(), webFolder: fileURLToPath(new URL('../../web', import.meta.url)) });
  stopWhenAsked(server);
  process.send?.({ kind: 'ready', address: server.address, tokenFile: server.tokenFile, exposed: server.exposed });
}

function typed(): Omit<ServerOptions, 'webFolder'> {
  try {
    const { values } = parseArgs({ options: { port: { type: 'string', default: '8080' }, host: { type: 'string', default: '127.0.0.1' }, data: { type: 'string', default: 'data/own' }, 'passphrase-file': { type: 'string' }, tls: { type: 'boolean', default: false }, cert: { type: 'string' }, key: { type: 'string' } } });
    const port = Number(values.port);
    if (!/^\d+$/.test(values.port) || port > 65_535) throw new StartFailure(`--port is "${values.port}"; give a whole number from 0 to 65535.`);
    const { host, data: dataFolder, 'passphrase-file': passphraseFile, cert: certFile, key: keyFile } = values;
    const tls = certFile !== undefined && keyFile !== undefined ? { certFile, keyFile } : values.tls ? 'self-made' as const : undefined;
    if (tls === undefined && (certFile ?? keyFile) !== undefined) throw new StartFailure('--cert and --key belong together; give both.');
    return { port, host, dataFolder, ...(passphraseFile === undefined ? {} : { passphraseFile }), ...(tls === undefined ? {} : { tls }) };
  } catch (error) {
    if (error instanceof StartFailure) throw error;
    throw new StartFailure(`${(error as Error).message.split('. ')[0]}; the options are --port, --host, --data, --passphrase-file, --tls, --cert and --key.`);
  }
}

function stopWhenAsked(server: RunningServer): void {
  const stop = (): void => void server.close().then(() => process.exit(0), fail);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop);
  // The program that started this one is gone.
  if (process.connected) process.on('disconnect', stop);
}

/** A failure that was foreseen is one sentence; a bug keeps its stack, for whoever mends it. */
function fail(error: unknown): void {
  const sentence = error instanceof StartFailure ? error.message : `The server met a fault of its own: ${(error as Error).message}`;
  process.stderr.write(`${error instanceof StartFailure ? sentence : (error as Error).stack}\n`);
  process.exitCode = 1;
  if (process.send === undefined) process.exit();
  process.send({ kind: 'failed', sentence }, () => process.exit());
}

run().catch(fail);
