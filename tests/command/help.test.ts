import { describe, expect, test } from 'vitest';
import { offpace } from '../../command/offpace.ts';
import { typed } from './typed.ts';

const commands = offpace('/anywhere').commands.flatMap((command) => [
  // One that only holds others does nothing by itself.
  ...(command.commands.length === 0 || command.registeredArguments.length > 0 ? [[command.name()]] : []),
  ...command.commands.map((below) => [command.name(), below.name()]),
]);

describe('the help', () => {
  test('of the program names every command and what exit codes mean', async () => {
    const { code, out, err } = await typed('--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const [name] of commands) expect(out).toMatch(new RegExp(`^ {2}${name}\\b.* {2}[A-Z]`, 'm'));
    expect(out).toContain('Exit codes: 0 done, 1 refused or something found wrong, 2 wrongly asked, 130 broken off.');
  });

  test.each(commands)('of %s %s explains every option and ends with examples of it', async (...names) => {
    const { code, out } = await typed(...names, '--help');
    expect(code).toBe(0);
    expect(out).toMatch(/^ {2}--json {2,}\S/m);
    expect(out.match(/^ {2}--[\w-]+(?: [<[]\w+[>\]])?\s*$/gm)).toBeNull();
    const examples = out.slice(out.indexOf('\nExample')).match(/^ {2}offpace .+$/gm) ?? [];
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) expect(example).toContain(`offpace ${names.join(' ')}`);
  });

  test('is what somebody gets who types no command, and that is an error', async () => {
    const { code, out, err } = await typed();
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('Usage: offpace');
  });
});
