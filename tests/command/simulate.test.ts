import path from 'node:path';
import { expect, test } from 'vitest';
import { folderForTest } from '../server/folder.ts';
import { get, serverForTest } from '../server/running.ts';
import { typed } from './typed.ts';

test('a simulated mound throws its count into a server that runs, and says so in JSON', async () => {
  const server = await serverForTest();
  const url = `${server.address.replace('http', 'ws')}/device`;
  const { code, out, err } = await typed('simulate', '--url', url, '--token-file', server.tokenFile, '--mound', 'south-2', '--athlete', 'ilmar-voskey', '--seed', '7', '--interval', '0.1', '--count', '2', '--no-coach', '--json');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(JSON.parse(out)).toEqual({ mound: 'south-2', seed: 7, count: 2, stopped: false });
  expect((await get<{ mound: string }[]>(server, '/api/mounds')).map(({ mound }) => mound)).toEqual(['south-2']);
});

test('without the token of the server it says where the token comes from', async () => {
  const tokenFile = path.join(folderForTest(), 'token');
  expect(await typed('simulate', '--url', 'ws://127.0.0.1:9/device', '--token-file', tokenFile)).toEqual({
    code: 1, out: '', err: `The token file ${tokenFile} cannot be read or is empty; start the server first, which writes it and prints where it is.\n`,
  });
});
