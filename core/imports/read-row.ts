import type { DeviceUnits } from '../facts/frames.ts';
import { idSchema } from '../facts/spelling.ts';
import type { Hand, Intent } from '../facts/vocabulary.ts';
import { BODY_UNITS, FORMS, type Field } from './fields.ts';
import { intentOf } from './intent-words.ts';
import type { Column, ImportChoices, Layout } from './layout.ts';
import { clockDegrees, dayOf, momentOf, numberOf, textOf, timeOfDayMs, type Cell, type DateOrder, type Moment } from './read-cell.ts';
import { inUnit, unitsOf } from './to-units.ts';

/** Why a row is not taken: a code, the header of the column at fault (empty for the whole row), and a sentence. */
export interface RowProblem {
  readonly kind: 'refused';
  readonly code: 'ragged' | 'not-json' | 'unreadable' | 'no-speed' | 'no-day' | 'unknown-athlete' | 'not-a-mound' | 'malformed' | 'impossible';
  readonly column: string;
  readonly sentence: string;
  /** Of `unknown-athlete`: what stands there. */
  readonly stranger?: string;
}

/** A row as it says itself; not yet checked against what a throw can be. */
export interface RowRead {
  readonly kind: 'read';
  readonly athlete: ImportChoices['athletes'][string];
  readonly mound: string;
  /** Parts the rows of an athlete's day; empty where the file does not. */
  readonly session: string;
  readonly moment: Moment;
  readonly intent: Intent | null;
  readonly trial: string;
  readonly units: DeviceUnits;
  /** In the form of the device protocol. */
  readonly body: unknown;
}

/** Reads rows of one file by what its columns are and by what was chosen for all of it. */
export function rowReader(layout: Layout, choices: ImportChoices): (cells: readonly Cell[]) => RowRead | RowProblem {
  const { columns, decimal } = layout;
  const at = new Map<Field, number>(columns.flatMap(({ field }, index) => (field === null ? [] : [[field, index]])));
  const bodyColumn = columns[at.get('body') ?? -1];
  const units = bodyColumn === undefined ? unitsOf(columns) : BODY_UNITS[bodyColumn.unit as keyof typeof BODY_UNITS];

  return (cells) => {
    if (cells.length !== columns.length) return refused('ragged', '', `This line has ${cells.length} columns where the head of the file has ${columns.length}; look for a separator too many or a quote that is not closed.`);
    try {
      return read(cells);
    } catch (error) {
      if (error instanceof Unreadable) return error.problem;
      throw error;
    }
  };

  function read(cells: readonly Cell[]): RowRead {
    const text = (field: Field): string => (at.has(field) ? textOf(cells[at.get(field)!]) : '');
    const athlete = athleteOf(text('athlete'));
    return {
      kind: 'read', athlete, units,
      mound: moundOf(text('mound')),
      session: text('session'),
      moment: momentIn(cells),
      intent: intentIn(text('intent')),
      trial: text('trial').slice(0, 80),
      body: bodyOf(cells, athlete.hand),
    };
  }

  function athleteOf(said: string): ImportChoices['athletes'][string] {
    if (!at.has('athlete')) return choices.athlete!;
    const known = Object.hasOwn(choices.athletes, said) ? choices.athletes[said] : undefined;
    if (known === undefined) throw new Unreadable('unknown-athlete', headerOf('athlete'), said === '' ? 'This line names no athlete.' : `Nobody has said who ${quoted(said)} is; choose the athlete for this name.`, said);
    return known;
  }

  function moundOf(said: string): string {
    if (said === '') return choices.mound;
    if (!idSchema.safeParse(said).success) throw new Unreadable('not-a-mound', headerOf('mound'), `${quoted(said)} cannot name a mound; use letters, digits, dashes, dots or underscores.`);
    return said;
  }

  function momentIn(cells: readonly Cell[]): Moment {
    const whole = cell(cells, 'moment');
    if (whole !== null) return momentOf(whole.value, whole.column.unit!) ?? unreadable(whole, 'a date and time');
    const date = cell(cells, 'date');
    const day = date === null ? choices.day : (dayOf(textOf(date.value), date.column.unit as DateOrder) ?? unreadable(date, `a date written ${date.column.unit}`));
    if (day === null) throw new Unreadable('no-day', '', 'This line says no day.');
    const time = cell(cells, 'time');
    return { kind: 'local', day, timeMs: time === null ? null : (timeOfDayMs(textOf(time.value)) ?? unreadable(time, 'a time of day such as 17:05:30')) };
  }

  function intentIn(said: string): Intent | null {
    if (said === '') return null;
    return Object.hasOwn(choices.intents, said) ? choices.intents[said]! : intentOf(said);
  }

  function bodyOf(cells: readonly Cell[], hand: Hand): unknown {
    const whole = cell(cells, 'body');
    if (whole !== null) return whole.value;
    const spin = spinOf(cells);
    const extension = distance(cells, 'extension');
    const armSpeed = amount(cells, 'armSpeed', units.speed);
    const rest = { ...(spin === null ? {} : { spin }), ...(extension === null ? {} : { extension }), ...(armSpeed === null ? {} : { armSpeed }) };
    const path = cell(cells, 'path');
    return path === null ? { summary: summaryOf(cells, hand, extension), ...rest } : { path: path.value, ...rest };
  }

  function summaryOf(cells: readonly Cell[], hand: Hand, extension: number | null): object {
    const releaseSpeed = amount(cells, 'releaseSpeed', units.speed);
    if (releaseSpeed === null) throw new Unreadable('no-speed', headerOf('releaseSpeed'), 'This line says no speed; a throw without one cannot be held against a fastball.');
    const [height, aside] = [distance(cells, 'releaseHeight'), sided(cells, 'releaseSide', units.distance, hand)];
    const far = distance(cells, 'releaseDistance') ?? (extension === null ? null : inUnit(choices.distanceM, 'm', units.distance) - extension);
    const [plateX, plateZ] = [sided(cells, 'plateSide', units.distance, hand), distance(cells, 'plateHeight')];
    const flown = cell(cells, 'flightTime');
    return present({
      releaseSpeed,
      plateSpeed: amount(cells, 'plateSpeed', units.speed),
      verticalBreak: amount(cells, 'verticalBreak', units.movement),
      horizontalBreak: sided(cells, 'horizontalBreak', units.movement, hand),
      flightTime: flown === null ? null : numeric(flown) / (flown.column.unit === 'ms' ? 1000 : 1),
      release: height === null || aside === null || far === null ? null : [aside, far, height],
      plate: plateX === null || plateZ === null ? null : { x: plateX, z: plateZ },
    });
  }

  function spinOf(cells: readonly Cell[]): object | null {
    const rate = cell(cells, 'spinRate');
    if (rate === null) return null;
    const [tilt, share] = [cell(cells, 'tilt'), cell(cells, 'efficiency')];
    return present({
      rate: numeric(rate),
      tilt: tilt === null ? null : tilt.column.unit === 'clock' ? (clockDegrees(tilt.value) ?? unreadable(tilt, 'a clock face such as 1:15')) : numeric(tilt),
      efficiency: share === null ? null : numeric(share) / (share.column.unit === 'percent' ? 100 : 1),
    });
  }

  /** What stands in the column of a field; null where there is none, or nothing in it. */
  function cell(cells: readonly Cell[], field: Field): Found | null {
    const index = at.get(field);
    if (index === undefined || textOf(cells[index]) === '') return null;
    return { column: columns[index]!, value: cells[index] };
  }

  function numeric(found: Found): number {
    return numberOf(found.value, decimal) ?? unreadable(found, 'a number');
  }

  function amount(cells: readonly Cell[], field: Field, unit: string): number | null {
    const found = cell(cells, field);
    return found === null ? null : inUnit(numeric(found), found.column.unit!, unit);
  }

  function distance(cells: readonly Cell[], field: Field): number | null {
    return amount(cells, field, units.distance);
  }

  /** Towards the right of the catcher. */
  function sided(cells: readonly Cell[], field: Field, unit: string, hand: Hand): number | null {
    const value = amount(cells, field, unit);
    const { towards } = columns[at.get(field) ?? -1] ?? {};
    const armSide = hand === 'right' ? 'left' : 'right';
    const positive = towards === 'arm' ? armSide : towards === 'glove' ? (armSide === 'left' ? 'right' : 'left') : towards;
    return value === null || positive === 'right' ? value : -value;
  }

  function headerOf(field: Field): string {
    return columns[at.get(field) ?? -1]?.header ?? FORMS[field].kind;
  }
}

interface Found {
  readonly column: Column;
  readonly value: Cell;
}

/** Leaves the reading of a row; it never leaves this file. */
class Unreadable extends Error {
  readonly problem: RowProblem;

  constructor(code: RowProblem['code'], column: string, sentence: string, stranger?: string) {
    super(code);
    this.problem = { ...refused(code, column, sentence), ...(stranger === undefined ? {} : { stranger }) };
  }
}

function unreadable({ column, value }: Found, wanted: string): never {
  throw new Unreadable('unreadable', column.header, `${quoted(textOf(value))} is not ${wanted}.`);
}

function refused(code: RowProblem['code'], column: string, sentence: string): RowProblem {
  return { kind: 'refused', code, column, sentence };
}

function quoted(text: string): string {
  return `"${text.length > 40 ? `${text.slice(0, 40)}…` : text}"`;
}

function present(fields: Readonly<Record<string, unknown>>): object {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));
}
