import { existsSync, readFileSync } from 'node:fs';

const ROOT = new URL('../../', import.meta.url);
export const PAGE = readFileSync(new URL('docs/flight.md', ROOT), 'utf8');

/** Files that the page names, in code marks or as links and pictures, from the root. */
export function filesNamed(): string[] {
  const marked = [...PAGE.matchAll(/`((?:core|docs|scripts|simulators|tests|web)\/[\w./-]+)`/g)].map(([, file]) => file!);
  const linked = [...PAGE.matchAll(/\]\(([^)#]+)\)/g)].map(([, file]) => `docs/${file!}`);
  return [...new Set([...marked, ...linked])].toSorted();
}

export function stands(file: string): boolean {
  return existsSync(new URL(file, ROOT));
}

/** Links to headings of the page itself, and the headings as such links name them. */
export function anchors(): { readonly used: readonly string[]; readonly there: readonly string[] } {
  const there = [...PAGE.matchAll(/^## (.+)$/gm)].map(([, words]) => words!.toLowerCase().replaceAll(/[^\w -]/g, '').replaceAll(' ', '-'));
  return { used: [...PAGE.matchAll(/\]\(#([^)]+)\)/g)].map(([, name]) => name!), there };
}

/** The other cells of the table row that begins with `name`; a page without it fails. */
export function rowOf(name: string): readonly string[] {
  const line = PAGE.split('\n').map((words) => words.trim()).find((words) => words.startsWith(`| ${name} |`));
  if (line === undefined) throw new Error(`docs/flight.md has no row "${name}".`);
  return line.split('|').slice(2, -1).map((cell) => cell.trim());
}

/** The number at the beginning of a cell, its minus sign as print writes it. */
export function numberOf(cell: string): number {
  return Number.parseFloat(cell.replace('−', '-').replace('±', ''));
}

/** The numbers of the first place that matches, in order. */
export function numbersIn(pattern: RegExp): number[] {
  const found = pattern.exec(PAGE);
  if (found === null) throw new Error(`docs/flight.md says nothing like ${pattern}.`);
  return found.slice(1).map(Number);
}
