import { expect, test } from 'vitest';
import type { FileLook } from '../../../core/imports/wire.ts';
import { lookAt } from '../../../server/files-in/look.ts';

const ENGLISH = `Date,Time,Athlete,Pitch kind,Release speed,Plate speed,Spin rate,Tilt,Spin efficiency,Induced vertical break,Horizontal break,Release height,Release side,Extension
2024-05-03,17:05:10,Invented Able,four-seam,88.1,80.9,2210,1:15,96,16.2,-7.4,5.9,-1.8,6.1
2024-05-03,17:05:40,Invented Able,changeup,78.4,72.0,1640,2:00,91,7.1,-14.8,5.8,-1.9,6.0
`;
const SPANISH = `\u{feff}Fecha;Hora;Lanzador;Tipo de lanzamiento;Velocidad (km/h);Giro (rpm);Inclinación;Quiebre vertical inducido (cm);Quiebre horizontal brazo (cm);Altura de salida (m);Extensión (m);Notas
03/05/2024;17:05:10;Inventada Peña;recta;141,2;2210;1:15;41,0;18,3;1,78;1,9;"dos
renglones"
23/05/2024;17:05:40;Inventada Peña;cambio;126,9;1640;2:30;18,2;38,0;1,75;1,88;
`;

async function columnsOf(text: string | Uint8Array): Promise<string[]> {
  const look = await seen(text);
  return look.layout.columns.map(({ header, field, unit, towards }) => [header, field, unit, towards].filter((part) => part !== null).join(' | '));
}

async function seen(text: string | Uint8Array): Promise<FileLook> {
  return (await lookAt(Buffer.from(text as string)))!;
}

test('a file with English heads is known by its words and by where its values lie', async () => {
  expect(await columnsOf(ENGLISH)).toEqual([
    'Date | date | year-first', 'Time | time', 'Athlete | athlete', 'Pitch kind | intent',
    'Release speed | releaseSpeed | mph', 'Plate speed | plateSpeed | mph', 'Spin rate | spinRate | rpm', 'Tilt | tilt | clock', 'Spin efficiency | efficiency | percent',
    'Induced vertical break | verticalBreak | in', 'Horizontal break | horizontalBreak | in | right',
    'Release height | releaseHeight | ft', 'Release side | releaseSide | ft | right', 'Extension | extension | ft',
  ]);
});

test('a file with Spanish heads, decimal commas, semicolons and a mark at its beginning as well', async () => {
  const look = await seen(SPANISH);
  expect(look.layout).toMatchObject({ form: 'separated', separator: ';', decimal: ',' });
  expect(await columnsOf(SPANISH)).toEqual([
    'Fecha | date | day-first', 'Hora | time', 'Lanzador | athlete', 'Tipo de lanzamiento | intent',
    'Velocidad (km/h) | releaseSpeed | km/h', 'Giro (rpm) | spinRate | rpm', 'Inclinación | tilt | clock',
    'Quiebre vertical inducido (cm) | verticalBreak | cm', 'Quiebre horizontal brazo (cm) | horizontalBreak | cm | arm',
    'Altura de salida (m) | releaseHeight | m', 'Extensión (m) | extension | m', 'Notas',
  ]);
  expect(look.rows[0]!.at(-1)).toBe('dos\nrenglones');
});

test('a guess says what it rests on, and what its values would fit as well', async () => {
  const { because } = await seen('speed,horizontal break,speed 2\n92,-4,80\n95,-6,81\n');
  expect(because[0]).toEqual({ words: ['speed'], unit: 'values', range: { low: 92, high: 95 }, alsoFits: ['km/h', 'ft/s'], towards: null, taken: null });
  expect(because[1]).toMatchObject({ unit: 'values', alsoFits: ['cm'], towards: 'guessed' });
  expect(because[2]).toMatchObject({ taken: 'releaseSpeed' });
});

test('30 to 47 are metres a second, 75 kilometres an hour nothing for certain', async () => {
  expect(await columnsOf('velocity\n31\n38.5\n')).toEqual(['velocity | releaseSpeed | m/s']);
  expect((await seen('velocity\n12\n14\n')).because[0]).toMatchObject({ unit: 'guessed' });
});

test('what no word names is not guessed, and a name of numbers is no name', async () => {
  expect(await columnsOf('a,athlete,x\n1,7,2\n2,8,3\n')).toEqual(['a', 'athlete', 'x']);
});

test('a file in the encoding of old spreadsheets keeps its accents', async () => {
  const look = await seen(Buffer.from('lanzador\tvelocidad\nPeña\t81\n', 'latin1'));
  expect(look.layout.separator).toBe('\t');
  expect(look.rows).toEqual([['Peña', '81']]);
});

test('a file in UTF-16 is read as well', async () => {
  expect((await seen(Buffer.from('\u{feff}athlete,speed\nPeña,81\n', 'utf16le'))).rows).toEqual([['Peña', '81']]);
});

test('JSON Lines are known by their first line, with paths in the form of the device protocol', async () => {
  const look = await seen(`${JSON.stringify({ time: 1714756000000, athlete: 'Invented Able', body: { summary: { releaseSpeed: 35 } } })}\n`);
  expect(look.layout.form).toBe('json-lines');
  expect(await columnsOf(`{"timestamp":1714756000000,"speed":88.1,"path":[[0,1,2,3]]}\n`)).toEqual(['timestamp | moment | ms', 'speed | releaseSpeed | mph', 'path | path | m']);
});

test('a file without a row shows nothing', async () => {
  expect(await lookAt(Buffer.from(''))).toBeNull();
  expect(await lookAt(Buffer.from('speed,spin\n'))).toBeNull();
});
