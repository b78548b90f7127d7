import { describe, expect, test } from 'vitest';
import { typed } from './typed.ts';

const SIMULATE = ['simulate', '--url', 'ws://127.0.0.1:9/device', '--token-file', 'token'];

describe('a command typed wrongly is answered with one sentence and exit code 2', () => {
  test.each([
    ['an option that does not exist', ['serve', '--prot', '9000'], "Unknown option '--prot' (did you mean --port?); --help lists what there is."],
    ['an option without its value', ['serve', '--port'], "Option '--port <n>' argument missing; --help lists what there is."],
    ['a word too many', ['start', 'bullpen'], "Too many arguments for 'start'. Expected 0 arguments but got 1; --help lists what there is."],
    ['a command that does not exist', ['bakcup'], "Unknown command 'bakcup' (did you mean backup?); --help lists what there is."],
    ['a port that is no number', ['serve', '--port', 'wall'], '--port is "wall"; give a whole number from 0 to 65535.'],
    ['a port above the last', ['start', '--port', '65536'], '--port is "65536"; give a whole number from 0 to 65535.'],
    ['an address that is none', ['start', '--host', 'bullpen'], '--host is "bullpen"; give 127.0.0.1, localhost or ::1 for this machine alone, 0.0.0.0 for the whole building, or another address of this machine.'],
    ['a certificate without its key', ['serve', '--cert', 'package.json'], '--cert and --key belong together; give both.'],
    ['two certificates', ['serve', '--tls', '--cert', 'package.json', '--key', 'package.json'], '--tls makes a certificate and --cert gives one; choose one of them.'],
    ['throws faster than an arm', ['start', '--interval', '0'], '--interval is "0"; give a number of seconds from 0.1 to 3600.'],
    ['a seed that is no whole number', ['start', '--seed', '1.5'], '--seed is "1.5"; give a whole number from 0 to 4294967295.'],
    ['a data folder without a name', ['serve', '--data', ''], '--data is empty; name a file or folder.'],
    ['an interval where nothing is simulated', ['serve', '--interval', '3'], "Unknown option '--interval'; --help lists what there is."],
    ['a simulator without a door', ['simulate', '--token-file', 'token'], "Required option '--url <address>' not specified; --help lists what there is."],
    ['a door that speaks something else', ['simulate', '--url', 'http://here', '--token-file', 'token'], 'The address of the device door is "http://here"; give one that begins with ws:// or wss://, such as ws://127.0.0.1:8080/device.'],
    ['a mound with a space', [...SIMULATE, '--mound', 'a b'], '--mound is "a b"; use 1 to 64 letters, digits, dashes, dots or underscores, beginning with a letter or digit.'],
    ['an athlete nobody knows', [...SIMULATE, '--athlete', 'nobody'], /^--athlete is "nobody"; give one of [\w-]+, [\w-, ]+\.$/],
    ['no throws at all', [...SIMULATE, '--count', '0'], '--count is "0"; give a whole number from 1 to 1000000.'],
    ['a fault that is none', [...SIMULATE, '--faults', 'late,broken'], /^--faults names "broken"; give all, or some of dropped, .+ with commas between\.$/],
    ['a restore of nothing', ['restore'], "Required option '--from <folder>' not specified; --help lists what there is."],
    ['a server without its token', ['conform', 'server', 'ws://127.0.0.1:9/device'], 'Give the token for devices, either with --token-file or with --token.'],
  ])('%s', async (_, args, sentence) => {
    const { code, out, err } = await typed(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^[^\n]+\n$/);
    expect(err.trim()).toEqual(typeof sentence === 'string' ? sentence : expect.stringMatching(sentence));
  });
});
