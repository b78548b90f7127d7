import { existsSync, readdirSync, readFileSync } from 'node:fs';

const ROOT = new URL('../../', import.meta.url);

/** The pages that somebody reads first, and those that they lead to; docs/command-line.md has a test of its own. */
export const PAGES = [
  'README.md', 'DEVELOPERS.md', 'docs/adapters.md', 'docs/backup.md', 'docs/device-protocol.md', 'docs/security.md',
  ...readdirSync(new URL('docs/', ROOT)).filter((name) => name.startsWith('for-')).map((name) => `docs/${name}`),
];

/** Scripts of npm that take minutes, or change what is checked in: that they exist is all that is looked at. */
const LONG = ['test', 'prove', 'bench', 'nodes', 'screens', 'schemas', 'study', 'lint', 'build'];
const { scripts } = JSON.parse(readFileSync(new URL('package.json', ROOT), 'utf8')) as { scripts: Record<string, string> };

export interface Command {
  readonly page: string;
  readonly line: string;
}

/** What a command of a page comes to: words for the command line of Offpace, something long that exists, or nothing known. */
export type Meant = { readonly kind: 'offpace'; readonly args: readonly string[] } | { readonly kind: 'exists' } | { readonly kind: 'unknown' };

/** Every line of a code block that begins as a command does; a # begins a remark. */
export function commandsOn(page: string): Command[] {
  const text = readFileSync(new URL(page, ROOT), 'utf8').replaceAll(/^```(?!sh|console|bash)\w[\s\S]*?^```/gm, '');
  return text.split('\n').flatMap((line) => {
    const [, command] = /^(?: {4,}|\$ )((?:npm|npx|offpace|node)(?: .*)?)$/.exec(line) ?? [];
    // What it does stands behind a # or a wide gap.
    return command === undefined ? [] : [{ page, line: command.split(/ +# | {2,}/)[0]!.trim() }];
  });
}

export function meantBy(line: string): Meant {
  const [program, ...words] = line.split(/ +/);
  if (program === 'offpace') return { kind: 'offpace', args: words };
  if (program === 'npx' && words[0] === 'offpace') return { kind: 'offpace', args: words.slice(1) };
  if (program === 'npx' && words[0] === 'vitest') return there(words.filter((word) => word.startsWith('tests/')));
  const [script, ...rest] = program === 'npm' ? (words[0] === 'run' ? words.slice(1) : words) : [];
  if (script === undefined || scripts[script] === undefined) return { kind: 'unknown' };
  if (LONG.includes(script) && rest.length === 0) return { kind: 'exists' };
  const [, ours] = /^node scripts\/offpace\.mjs ?(.*)$/.exec(scripts[script]) ?? [];
  if (ours === undefined || (rest.length > 0 && rest[0] !== '--')) return { kind: 'unknown' };
  return { kind: 'offpace', args: [...(ours === '' ? [] : ours.split(' ')), ...rest.slice(1)] };
}

function there(files: readonly string[]): Meant {
  return { kind: files.every((file) => existsSync(new URL(file, ROOT))) ? 'exists' : 'unknown' };
}
