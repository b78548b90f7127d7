import type { Database } from 'libsql';
import { FACT_VERSION, type DeviceSays, type Fact } from '../../core/facts/fact.ts';
import type { AppendReply, ConflictCode, Entry, RefusalEntry, RefuseReply } from './fact-log.ts';
import { fingerprint, fingerprintOfFrame } from './fingerprint.ts';
import { findNumber } from './numbers.ts';

export interface Written<Reply> {
  readonly reply: Reply;
  /** What is new in the log; null when nothing is. */
  readonly fact: Fact | null;
}

/** What is written inside a transaction; the caller opens and commits it. */
export function writer(database: Database): {
  append(entry: Entry, atMs: number): Written<AppendReply>;
  refuse(refusal: RefusalEntry, atMs: number): Written<RefuseReply>;
} {
  const number = findNumber(database);
  const nextPlace = database.prepare('SELECT coalesce(max(place), 0) + 1 AS place FROM facts WHERE mound = ?');
  const insertFact = database.prepare('INSERT INTO facts (mound, place, at_ms, said_by, version, said) VALUES (?, ?, ?, ?, ?, ?)');
  const insertNumber = database.prepare('INSERT INTO numbers (device, run, sequence, kind, fingerprint, mound, place) VALUES (?, ?, ?, ?, ?, ?, ?)');
  const findRequest = database.prepare('SELECT fingerprint, mound, place FROM requests WHERE request = ?');
  const insertRequest = database.prepare('INSERT INTO requests VALUES (?, ?, ?, ?)');
  const insertRefusal = database.prepare('INSERT INTO refusals (at_ms, mound, device, run, sequence, code, path, sentence, frame) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)');

  function insert(mound: string, by: string, said: Fact['said'], atMs: number): Fact {
    const { place } = nextPlace.get(mound) as { place: number };
    insertFact.run(mound, place, atMs, by, FACT_VERSION, JSON.stringify(said));
    return { mound, place, atMs, by, version: FACT_VERSION, said };
  }

  function measurement(entry: Entry, said: DeviceSays, atMs: number): Written<AppendReply> {
    const { device, run, sequence } = said.source;
    const print = fingerprintOfFrame(said);
    const known = number({ device, run, sequence });
    if (known !== null) {
      if (known.kind === 'refused') return conflict('refused-before', 'sequence', `Number ${sequence} of this run was refused before and stays refused; forget it.`);
      if (known.fingerprint !== print) return conflict('body-differs', 'sequence', `Number ${sequence} of this run is stored with another content; what is stored stays. Start a new run when the counter starts anew, and change a stored throw by a correction.`);
      return { reply: { kind: 'stored', mound: known.mound, place: known.place, again: true }, fact: null };
    }
    const mound = said.kind === 'throw-measured' ? entry.mound : moundOfCorrected(device, said.corrects);
    if (typeof mound !== 'string') return mound;
    const fact = insert(mound, entry.by, said, atMs);
    insertNumber.run(device, run, sequence, said.kind, print, mound, fact.place);
    return { reply: { kind: 'stored', mound, place: fact.place, again: false }, fact };
  }

  function moundOfCorrected(device: string, corrects: { readonly run: string; readonly sequence: number }): string | Written<AppendReply> {
    const original = number({ device, ...corrects });
    if (original === null) return conflict('nothing-to-correct', 'corrects', `Number ${corrects.sequence} of run ${corrects.run} is not stored yet; send that throw first, then this correction again.`, false);
    if (original.kind === 'refused') return conflict('nothing-to-correct', 'corrects', `Number ${corrects.sequence} of run ${corrects.run} was refused, so there is nothing to correct; forget the correction, and send the throw under a new number.`);
    if (original.kind === 'throw-corrected') return conflict('nothing-to-correct', 'corrects.sequence', `Number ${corrects.sequence} of run ${corrects.run} is itself a correction; name the number of the throw.`);
    return original.mound;
  }

  function statement(entry: Entry, atMs: number): Written<AppendReply> {
    const { request, mound, said } = entry;
    const print = fingerprint({ mound, said });
    const known = request === undefined ? undefined : (findRequest.get(request) as { fingerprint: string; mound: string; place: number } | undefined);
    if (known !== undefined) {
      if (known.fingerprint !== print) return conflict('request-differs', 'request', 'This request id was already used for another statement; choose a new one for each statement.');
      return { reply: { kind: 'stored', mound: known.mound, place: known.place, again: true }, fact: null };
    }
    const fact = insert(mound, entry.by, said, atMs);
    if (request !== undefined) insertRequest.run(request, print, mound, fact.place);
    return { reply: { kind: 'stored', mound, place: fact.place, again: false }, fact };
  }

  return {
    append(entry, atMs) {
      const { said } = entry;
      return said.kind === 'throw-measured' || said.kind === 'throw-corrected' ? measurement(entry, said, atMs) : statement(entry, atMs);
    },
    refuse(refusal, atMs) {
      const { mound, device, run, sequence, code, path, sentence, settles, frame } = refusal;
      insertRefusal.run(atMs, mound, device, run, sequence, code, path, sentence, frame);
      if (settles && device !== null && run !== null && sequence !== null && number({ device, run, sequence }) === null) {
        insertNumber.run(device, run, sequence, 'refused', null, null, null);
      }
      return { reply: { kind: 'kept' }, fact: null };
    },
  };
}

function conflict(code: ConflictCode, path: string, sentence: string, final = true): Written<AppendReply> {
  return { reply: { kind: 'conflict', code, path, sentence, final }, fact: null };
}
