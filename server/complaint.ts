import type { z } from 'zod';

/** The first thing wrong with something that was said: where it stands and what to do. */
export interface Complaint {
  /** Keys and indexes joined with dots; empty for the whole. */
  readonly path: string;
  readonly sentence: string;
}

/** Turns the first of zod's issues into one sentence that a person can act on. */
export function complaint(error: z.ZodError): Complaint {
  const issue = innermost(error.issues[0]!);
  if (issue.code === 'unrecognized_keys') {
    const [key] = issue.keys;
    return { path: joined([...issue.path, key!]), sentence: `The field ${shortened(key!)} is not known here; check its spelling or leave it out.` };
  }
  return { path: joined(issue.path), sentence: sentenceOf(issue) };
}

type Issue = z.core.$ZodIssue;

/** Of a union, the branch that came farthest is the one that was meant. */
function innermost(issue: Issue): Issue {
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return issue;
  const [meant] = [...issue.errors].sort((a, b) => a.length - b.length);
  const inner = meant?.[0];
  return inner === undefined ? issue : innermost({ ...inner, path: [...issue.path, ...inner.path] });
}

function sentenceOf(issue: Issue): string {
  const field = issue.path.length === 0 ? 'The message' : `The field ${shortened(joined(issue.path))}`;
  switch (issue.code) {
    case 'invalid_type': return issue.message.endsWith('received undefined') ? `${field} is missing; it must be ${named(issue.expected)}.` : `${field} must be ${named(issue.expected)}.`;
    case 'too_small': return own(issue) ?? `${field} must ${bound(issue.origin, issue.inclusive === false ? 'more than' : 'at least', issue.minimum)}.`;
    case 'too_big': return own(issue) ?? `${field} must ${bound(issue.origin, issue.inclusive === false ? 'less than' : 'at most', issue.maximum)}.`;
    case 'invalid_value': return own(issue) ?? `${field} must be ${anyOf(issue.values)}.`;
    case 'invalid_union': return 'options' in issue ? `${field} must be ${anyOf(issue.options as readonly unknown[])}.` : `${field} has none of the forms that are known here.`;
    default: return `${field} cannot be used: ${issue.message}.`;
  }
}

/** A message that was written for its place, as a sentence; zod's own begin in a known way. */
function own(issue: Issue): string | null {
  return /^(?:Too |Invalid )/.test(issue.message) ? null : `${issue.message.charAt(0).toUpperCase()}${issue.message.slice(1)}.`;
}

function bound(origin: string, word: string, limit: number | bigint): string {
  if (origin === 'string') return `have ${word} ${limit} ${limit === 1 ? 'character' : 'characters'}`;
  return origin === 'array' ? `have ${word} ${limit} ${limit === 1 ? 'item' : 'items'}` : `be ${word} ${limit}`;
}

function anyOf(values: readonly unknown[]): string {
  return values.map((value) => JSON.stringify(value)).join(' or ');
}

const NAMES: Readonly<Record<string, string>> = {
  string: 'text', number: 'a number', int: 'a whole number', boolean: 'true or false', array: 'a list', tuple: 'a list', object: 'an object', null: 'null',
};

function named(expected: string): string {
  return NAMES[expected] ?? expected;
}

const joined = (path: readonly PropertyKey[]): string => path.map(String).join('.').slice(0, 200);
const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}…` : text);

/** What core says in half a sentence. */
export function asSentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
