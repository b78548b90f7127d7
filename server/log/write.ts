import type { Database } from 'libsql';
import type { DeviceSays, Fact } from '../../core/facts/fact.ts';
import type { AppendReply, ConflictCode, Entry, RefusalEntry, RefuseReply } from './fact-log.ts';
import { FactRows } from './fact-rows.ts';
import { Fresh } from './fresh.ts';
import { contentOf, fingerprint } from './fingerprint.ts';
import type { Numbers } from './numbers.ts';
import type { Grown } from './tables.ts';

export interface Written<Reply> {
  readonly reply: Reply;
  /** What is new in the log; null when nothing is. */
  readonly fact: Fact | null;
}

/** Makes rows of what is said, and answers as if they were in the file; the caller brings them there. */
export interface Writer {
  append(entry: Entry, atMs: number): Written<AppendReply>;
  refuse(refusal: RefusalEntry, atMs: number): Written<RefuseReply>;
  /** What was said since the last time is a group that comes into the file as a whole; all of it has become rows. */
  complete(): void;
  /** The oldest group is in the file. */
  stand(): void;
  /** What is not in the file yet never will be. */
  forget(): void;
}

interface Request {
  readonly request: string;
  readonly fingerprint: string;
  readonly mound: string;
  readonly place: number;
}

/** @param into where the rows go; `database` is the file in which they will be */
export function writer(database: Database, numbers: Numbers, into: Grown): Writer {
  const facts = new FactRows(database, into.facts);
  const requests = new Fresh<Request>();
  const all = [facts, numbers, requests];
  const findRequest = database.prepare('SELECT request, fingerprint, mound, place FROM requests WHERE request = ?');

  function measurement(entry: Entry, said: DeviceSays, atMs: number): Written<AppendReply> {
    const { device, run, sequence } = said.source;
    const known = numbers.find({ device, run, sequence });
    if (known !== null) {
      if (known.kind === 'refused') return conflict('refused-before', 'sequence', `Number ${sequence} of this run was refused before and stays refused; forget it.`);
      if (!isStored(said, facts.at(known.mound, known.place))) return conflict('body-differs', 'sequence', `Number ${sequence} of this run is stored with another content; what is stored stays. Start a new run when the counter starts anew, and change a stored throw by a correction.`);
      return { reply: { kind: 'stored', mound: known.mound, place: known.place, again: true }, fact: null };
    }
    const mound = said.kind === 'throw-measured' ? entry.mound : moundOfCorrected(device, said.corrects);
    if (typeof mound !== 'string') return mound;
    const fact = facts.add(mound, entry.by, said, atMs);
    numbers.settle({ device, run, sequence }, said.kind, mound, fact.place);
    return { reply: { kind: 'stored', mound, place: fact.place, again: false }, fact };
  }

  function moundOfCorrected(device: string, corrects: { readonly run: string; readonly sequence: number }): string | Written<AppendReply> {
    const original = numbers.find({ device, ...corrects });
    if (original === null) return conflict('nothing-to-correct', 'corrects', `Number ${corrects.sequence} of run ${corrects.run} is not stored yet; send that throw first, then this correction again.`, false);
    if (original.kind === 'refused') return conflict('nothing-to-correct', 'corrects', `Number ${corrects.sequence} of run ${corrects.run} was refused, so there is nothing to correct; forget the correction, and send the throw under a new number.`);
    if (original.kind === 'throw-corrected') return conflict('nothing-to-correct', 'corrects.sequence', `Number ${corrects.sequence} of run ${corrects.run} is itself a correction; name the number of the throw.`);
    if (facts.at(original.mound, original.place)?.said.kind === 'erased') return conflict('nothing-to-correct', 'corrects', `Number ${corrects.sequence} of run ${corrects.run} was erased, so there is nothing to correct; forget the correction.`);
    return original.mound;
  }

  function statement(entry: Entry, atMs: number): Written<AppendReply> {
    const { request, mound, said } = entry;
    const print = fingerprint({ mound, said });
    const known = request === undefined ? undefined : (requests.find((one) => one.request === request) ?? (findRequest.get(request) as Request | undefined));
    if (known !== undefined) {
      if (known.fingerprint !== print) return conflict('request-differs', 'request', 'This request id was already used for another statement; choose a new one for each statement.');
      return { reply: { kind: 'stored', mound: known.mound, place: known.place, again: true }, fact: null };
    }
    const fact = facts.add(mound, entry.by, said, atMs);
    if (request !== undefined) {
      into.requests.add(request, print, mound, fact.place);
      requests.add({ request, fingerprint: print, mound, place: fact.place });
    }
    return { reply: { kind: 'stored', mound, place: fact.place, again: false }, fact };
  }

  return {
    append(entry, atMs) {
      const { said } = entry;
      return said.kind === 'throw-measured' || said.kind === 'throw-corrected' ? measurement(entry, said, atMs) : statement(entry, atMs);
    },
    refuse(refusal, atMs) {
      const { mound, device, run, sequence, code, path, sentence, settles, frame } = refusal;
      into.refusals.add(atMs, mound, device, run, sequence, code, path, sentence, frame);
      if (settles && device !== null && run !== null && sequence !== null && numbers.find({ device, run, sequence }) === null) {
        numbers.settle({ device, run, sequence }, 'refused', null, null);
      }
      return { reply: { kind: 'kept' }, fact: null };
    },
    complete: () => all.forEach((rows) => rows.complete()),
    stand: () => all.forEach((rows) => rows.stand()),
    forget: () => all.forEach((rows) => rows.forget()),
  };
}

/** Whether a frame says what is stored under its number. Of a stored fact that is damaged nobody can tell: it stays stored. */
function isStored(said: DeviceSays, stored: Fact | null): boolean {
  if (stored?.said.kind !== 'throw-measured' && stored?.said.kind !== 'throw-corrected') return true;
  return contentOf(stored.said) === contentOf(said);
}

function conflict(code: ConflictCode, path: string, sentence: string, final = true): Written<AppendReply> {
  return { reply: { kind: 'conflict', code, path, sentence, final }, fact: null };
}
