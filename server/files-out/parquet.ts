import { ByteWriter, ParquetWriter, schemaFromColumnData, type BasicType, type KeyValue, type SchemaElement } from 'hyparquet-writer';
import { SCIENCE_VERSION } from '../../core/session/analyse.ts';
import type { Cell, CellType } from './column.ts';
import type { ColumnOut } from './columns.ts';

/** Rows kept until they are written together: enough for columns to be worth it, few enough for any memory. */
const GROUP = 4096;

/** Every column may be empty. Moments are in UTC. */
const TYPES: Readonly<Record<CellType, BasicType>> = { text: 'STRING', integer: 'INT32', number: 'DOUBLE', truth: 'BOOLEAN', moment: 'TIMESTAMP' };

/** Rows as Parquet, a group of them at a time. The meaning of every column stands in the file's own notes. */
export async function* parquetOf(rows: AsyncIterable<Cell[][]>, columns: readonly ColumnOut[]): AsyncGenerator<Uint8Array> {
  const writer = new ByteWriter();
  const parquet = new ParquetWriter({ writer, schema: schemaOf(columns), kvMetadata: notesOn(columns), createdBy: 'offpace' });
  let group: Cell[][] = [];
  for await (const some of rows) {
    group.push(...some);
    if (group.length < GROUP) continue;
    add(parquet, columns, group);
    group = [];
    yield taken(writer);
  }
  add(parquet, columns, group);
  void parquet.finish();
  yield taken(writer);
}

function schemaOf(columns: readonly ColumnOut[]): SchemaElement[] {
  return schemaFromColumnData({ columnData: columns.map(({ name, type }) => ({ name, data: [], type: TYPES[type], nullable: true })) });
}

function notesOn(columns: readonly ColumnOut[]): KeyValue[] {
  return [
    { key: 'offpace', value: JSON.stringify({ scienceVersion: SCIENCE_VERSION }) },
    ...columns.map(({ name, meaning }) => ({ key: `offpace.${name}`, value: meaning })),
  ];
}

function add(parquet: ParquetWriter, columns: readonly ColumnOut[], rows: readonly (readonly Cell[])[]): void {
  if (rows.length === 0) return;
  void parquet.write({ columnData: columns.map(({ name }, index) => ({ name, data: rows.map((row) => row[index]), offsetIndex: false })), rowGroupSize: GROUP + rows.length });
}

/** What was written since; places in the file go on counting. */
function taken(writer: ByteWriter): Uint8Array {
  const bytes = writer.getBytes().slice();
  writer.index = 0;
  return bytes;
}
