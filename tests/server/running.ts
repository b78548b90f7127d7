import { readFileSync } from 'node:fs';
import { onTestFinished } from 'vitest';
import { startServer, type RunningServer, type ServerOptions } from '../../server/serve.ts';
import { folderForTest } from './folder.ts';

export interface TestServer extends RunningServer {
  readonly token: string;
  readonly dataFolder: string;
}

/** A server of its own for the running test, on a free port and a real file, stopped afterwards. */
export async function serverForTest(more: Partial<ServerOptions> = {}): Promise<TestServer> {
  const dataFolder = more.dataFolder ?? folderForTest();
  const server = await startServer({ port: 0, host: '127.0.0.1', dataFolder, webFolder: dataFolder, logLevel: 'silent', ...more });
  onTestFinished(server.close);
  return { ...server, dataFolder, token: readFileSync(server.tokenFile, 'utf8').trim() };
}

/** What a server holds of a mound, asked over HTTP. */
export async function get<Answer>(server: RunningServer, address: string): Promise<Answer> {
  const response = await fetch(`${server.address}${address}`);
  return (await response.json()) as Answer;
}
