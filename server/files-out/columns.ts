import type { Cell, CellType, Column, ThrowKnown } from './column.ts';
import { JUDGED } from './columns-judged.ts';
import { READ } from './columns-read.ts';
import { SAID } from './columns-said.ts';
import { UNITS, type UnitSystem } from './units.ts';

/** Every column of a tidy row in its order, for CSV, Parquet, the page about exports and the description of the API alike. */
export const COLUMNS: readonly Column[] = [...SAID, ...READ, ...JUDGED];

/** The last column: why numbers of the row are not there. */
const MISSING = { name: 'missing', meaning: 'Why numbers are not there, such as `extension=not-sent`: not-visible (to this device), not-defined (in this stage), not-sent, problem (the measurement contradicts itself).' } as const;

export interface ColumnOut {
  /** With its unit, as it stands in a file. */
  readonly name: string;
  readonly type: CellType;
  readonly meaning: string;
}

export interface TableShape {
  readonly units: UnitSystem;
  /** Codes in place of ids and of what somebody wrote, and no names; null to give all of it as it is. */
  readonly coded: ((id: string) => string) | null;
}

/** The columns of a file. */
export function columnsOut({ units, coded }: TableShape): ColumnOut[] {
  return [...wanted(coded).map((column) => ({ name: nameOut(column, units), type: column.type, meaning: column.meaning })), { ...MISSING, type: 'text' }];
}

/** A column's name in a file, with its unit. */
function nameOut({ name, quantity, unit }: Column, units: UnitSystem): string {
  if (quantity !== undefined) return `${name}_${UNITS[units][quantity].name}`;
  return unit === undefined || unit === '1' ? name : `${name}_${unit.replaceAll(' ', '_')}`;
}

/** What makes a row of a throw, its cells in the order of the columns. */
export function rowMaker({ units, coded }: TableShape): (thrown: ThrowKnown) => Cell[] {
  const columns = wanted(coded).map((column) => ({ ...column, fromSi: column.quantity === undefined ? null : UNITS[units][column.quantity].fromSi }));
  return (thrown) => {
    const missing: string[] = [];
    const cells = columns.map(({ name, type, tells, of, fromSi }): Cell => {
      const value = of(thrown);
      if (value === null) return null;
      if (type !== 'number') return tells === 'code' && coded !== null ? coded(String(value)) : value;
      if (typeof value === 'number') return fromSi === null ? value : fromSi(value);
      missing.push(`${name}=${String(value)}`);
      return null;
    });
    return [...cells, missing.length === 0 ? null : missing.join(' ')];
  };
}

function wanted(coded: TableShape['coded']): readonly Column[] {
  return coded === null ? COLUMNS : COLUMNS.filter(({ tells }) => tells !== 'name');
}
