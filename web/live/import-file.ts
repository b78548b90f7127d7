import type { BroughtImport, CheckAnswer, StoreAnswer, WithdrawAnswer } from '../../core/facts/import-wire.ts';
import type { Refusal } from '../../core/facts/wire.ts';
import type { ImportChoices, Layout } from '../../core/imports/layout.ts';
import { HEAD_BYTES, type LookAnswer, type Recipe } from '../../core/imports/wire.ts';
import { heardRefusal } from './nobody-here.ts';
import type { Answer } from './recorded.ts';

export function lookAtFile(file: File): Promise<Answer<LookAnswer>> {
  return ask('POST', '/imports/look', file.slice(0, HEAD_BYTES));
}

export function beginImport(name: string, layout: Layout, choices: ImportChoices): Promise<Answer<{ readonly id: string }>> {
  return ask('POST', '/imports', { name, layout, choices });
}

/**
 * Sends a whole file, and waits until every row was checked.
 * @param onSent told how much is sent, from 0 to 1
 */
export function sendFile(id: string, file: File, onSent: (share: number) => void, signal: AbortSignal): Promise<Answer<CheckAnswer>> {
  // Only this way of asking tells how far it is.
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.responseType = 'json';
    request.upload.addEventListener('progress', ({ loaded, total }) => onSent(loaded / Math.max(1, total)));
    request.addEventListener('load', () => resolve(answerOf(request.status < 300, request.response)));
    for (const ended of ['error', 'abort']) request.addEventListener(ended, () => resolve({ kind: 'silent' }));
    signal.addEventListener('abort', () => request.abort());
    request.open('PUT', `/api/imports/${id}/file`);
    request.send(file);
  });
}

export function storeImport(id: string, mode: 'all-or-nothing' | 'keep-the-good'): Promise<Answer<StoreAnswer>> {
  return ask('POST', `/imports/${id}/store`, { mode });
}

export async function endImport(id: string): Promise<void> {
  await ask('DELETE', `/imports/${id}`);
}

/** Where the refused rows of an import are given out as one file. */
export const refusedAddress = (id: string): string => `/api/imports/${id}/refused.csv`;

/** The imports that count, newest first. */
export function askForImports(): Promise<Answer<readonly BroughtImport[]>> {
  return ask('GET', '/imports');
}

/** Takes an import back as a whole, by the name of its file. */
export function withdrawImport({ id, fileName }: BroughtImport): Promise<Answer<WithdrawAnswer>> {
  return ask('POST', `/imports/${encodeURIComponent(id)}/withdraw`, { name: fileName });
}

export function askForRecipes(): Promise<Answer<readonly Recipe[]>> {
  return ask('GET', '/recipes');
}

export function keepRecipe(name: string, layout: Layout): Promise<Answer<Recipe>> {
  return ask('POST', '/recipes', { name, layout });
}

export function renameRecipe(id: string, name: string): Promise<Answer<Recipe>> {
  return ask('PATCH', `/recipes/${id}`, { name });
}

export async function removeRecipe(id: string): Promise<void> {
  await ask('DELETE', `/recipes/${id}`);
}

async function ask<T>(method: string, address: string, body?: object): Promise<Answer<T>> {
  try {
    const sent = body === undefined ? {} : body instanceof Blob ? { body, headers: { 'content-type': 'application/octet-stream' } } : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
    const response = await fetch(`/api${address}`, { method, ...sent });
    return answerOf<T>(response.ok, response.status === 204 ? null : await response.json());
  } catch {
    return { kind: 'silent' };
  }
}

function answerOf<T>(isGood: boolean, body: unknown): Answer<T> {
  if (isGood) return { kind: 'answer', value: body as T };
  const { code, sentence } = (body ?? { code: 'internal', sentence: '' }) as Refusal;
  heardRefusal({ code });
  return { kind: 'refused', code, sentence };
}
