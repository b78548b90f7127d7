import { describe, expect, it } from 'vitest';
import { ATHLETES } from '../../simulators/athletes.ts';
import { FAULT_NAMES } from '../../simulators/faults.ts';
import { readOptions } from '../../simulators/options.ts';

const NEEDED = ['--url', 'ws://127.0.0.1:8080/device', '--token-file', 'token'];

describe('options of the simulator', () => {
  it('a device door and a token file are enough', () => {
    expect(readOptions(NEEDED)).toEqual({
      kind: 'run',
      options: { url: 'ws://127.0.0.1:8080/device', tokenFile: 'token', mound: 'north-1', athletes: ATHLETES, seed: 1, intervalMs: 6_000, count: null, faults: [], coach: true },
    });
  });

  it('everything can be said', () => {
    const read = readOptions([...NEEDED, '--mound', 'south-2', '--athlete', 'ilmar-voskey', '--seed', '7', '--interval', '0.5', '--count', '12', '--faults', 'late,silent', '--no-coach']);
    expect(read).toMatchObject({ options: { mound: 'south-2', athletes: [{ profile: { hand: 'left' } }], seed: 7, intervalMs: 500, count: 12, faults: ['late', 'silent'], coach: false } });
    expect(readOptions([...NEEDED, '--faults', 'all'])).toMatchObject({ options: { faults: FAULT_NAMES } });
  });

  it('help names every option and every fault', () => {
    const read = readOptions(['--help']);
    const text = read.kind === 'help' ? read.text : '';
    for (const word of ['--url', '--token-file', '--mound', '--athlete', '--seed', '--interval', '--count', '--faults', '--no-coach', ...FAULT_NAMES]) expect(text).toContain(word);
  });

  it.each([
    [['--token-file', 'token'], '--url is missing'],
    [['--url', 'http://here', '--token-file', 'token'], '--url is "http://here"'],
    [['--url', 'ws://here/device'], '--token-file is missing'],
    [[...NEEDED, '--mound', 'a b'], '--mound is "a b"'],
    [[...NEEDED, '--athlete', 'nobody'], '--athlete is "nobody"'],
    [[...NEEDED, '--seed', '-1'], '--seed'],
    [[...NEEDED, '--seed', '4294967296'], '--seed is "4294967296"'],
    [[...NEEDED, '--interval', '0'], '--interval is "0"'],
    [[...NEEDED, '--count', '0'], '--count is "0"'],
    [[...NEEDED, '--faults', 'late,broken'], '--faults names "broken"'],
    [[...NEEDED, '--speed', '3'], '--speed'],
    [[...NEEDED, 'extra'], 'extra'],
  ])('%j is answered with one sentence', (args, about) => {
    const read = readOptions(args);
    const sentence = read.kind === 'wrong' ? read.sentence : '';
    expect(sentence).toContain(about);
    expect(sentence).toMatch(/^[^\n]+\.$/);
  });
});
