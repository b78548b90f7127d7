import { describe, expect, test } from 'vitest';
import { nodeComplaint } from '../../scripts/node-version.mjs';
import { runNode } from './run-command.ts';

/** A Node that says it is of that version. */
const pretending = (version: string) =>
  `--import=data:text/javascript,Object.defineProperty(process,"versions",{value:{...process.versions,node:"${version}"}})`;

describe('every command of npm', () => {
  test.each(['offpace', 'steps'])('checks Node before anything else (scripts/%s.mjs)', async (script) => {
    const { code, out, err } = await runNode([pretending('18.20.4'), `scripts/${script}.mjs`, '--prot']).ended;
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toBe('Offpace needs Node 20.19 or a later 20, or 22.12 or later, and this is Node 18.20.4; install a newer Node and try again.\n');
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
