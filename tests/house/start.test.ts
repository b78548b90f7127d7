import { once } from 'node:events';
import { createServer, type AddressInfo } from 'node:net';
import { describe, expect, test } from 'vitest';
import { nodeComplaint } from '../../scripts/node-version.mjs';
import { runNode } from './run-command.ts';

const start = (...args: string[]) => runNode(['scripts/start.mjs', ...args]).ended;

/** A Node that says it is of that version. */
const pretending = (version: string) =>
  `--import=data:text/javascript,Object.defineProperty(process,"versions",{value:{...process.versions,node:"${version}"}})`;

describe('npm start, given wrongly, answers with one sentence and exit code 2', () => {
  test.each([
    ['an option that does not exist', ['--prot', '9000'], "Unknown option '--prot'; --help lists the options."],
    ['an option without its value', ['--port'], "Option '--port <value>' argument missing; --help lists the options."],
    ['a word too many', ['bullpen'], "Unexpected argument 'bullpen'; --help lists the options."],
    ['a port that is no number', ['--port', 'wall'], '--port is "wall"; give a whole number from 0 to 65535.'],
    ['a port above the last', ['--port', '65536'], '--port is "65536"; give a whole number from 0 to 65535.'],
    ['an address that is none', ['--host', 'bullpen'], '--host is "bullpen"; give 127.0.0.1, localhost or ::1 for this machine alone, 0.0.0.0 for the whole building, or another address of this machine.'],
    ['a certificate without its key', ['--cert', 'package.json'], '--cert and --key belong together; give both.'],
    ['two certificates', ['--tls', '--cert', 'package.json', '--key', 'package.json'], '--tls makes a certificate and --cert gives one; choose one of them.'],
    ['a passphrase that is in no file', ['--passphrase-file', 'nowhere.txt'], '--passphrase-file is "nowhere.txt", and there is no such file.'],
    ['throws faster than an arm', ['--interval', '0'], '--interval is "0"; give a number of seconds from 0.1 to 3600.'],
    ['a seed that is no whole number', ['--seed', '1.5'], '--seed is "1.5"; give a whole number from 0 to 4294967295.'],
    ['a data folder that is a file', ['--data', 'package.json'], '--data is "package.json", which is a file; give a folder.'],
    ['an interval where nothing is simulated', ['serve', '--interval', '3'], "Unknown option '--interval'; --help lists the options."],
  ])('%s', async (_, args, sentence) => {
    expect(await start(...args)).toEqual({ code: 2, out: '', err: `${sentence}\n` });
  });
});

describe('npm start', () => {
  test('says which port is taken, before it installs or builds anything', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const ended = await start('--port', String(port));
    other.close();
    expect(ended).toEqual({
      code: 1,
      out: '',
      err: `Port ${port} on 127.0.0.1 is taken by another program; stop that one or give another port with --port.\n`,
    });
  });

  test.each(['start', 'steps'])('checks Node before anything else (scripts/%s.mjs)', async (script) => {
    const { code, out, err } = await runNode([pretending('18.20.4'), `scripts/${script}.mjs`, '--prot']).ended;
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toBe('Offpace needs Node 20.19 or a later 20, or 22.12 or later, and this is Node 18.20.4; install a newer Node and try again.\n');
  });

  test.each([
    ['start', [], ['--port', '--host', '--data', '--passphrase-file', '--tls', '--cert', '--interval', '--seed', '--help'], 'data/demo'],
    ['serve', ['serve'], ['--port', '--host', '--data', '--passphrase-file', '--tls', '--cert', '--help'], 'data/own'],
  ])('--help of %s names every option and where throws are kept', async (_, args, options, folder) => {
    const { code, out, err } = await start(...args, '--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out.match(/^ {2}--[\w-]+/gm)?.map((option) => option.trim())).toEqual(options);
    expect(out).toContain(folder);
  });
});

describe('the Node that Offpace runs on', () => {
  test.each(['20.19.0', '20.20.2', '22.12.0', '24.0.0', '26.1.0'])('%s will do', (version) => {
    expect(nodeComplaint(version)).toBeNull();
  });

  test.each(['8.0.0', '18.20.4', '20.18.3', '21.7.3', '22.11.0'])('%s will not', (version) => {
    expect(nodeComplaint(version)).toContain(`this is Node ${version};`);
  });
});
