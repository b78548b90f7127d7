import * as fc from 'fast-check';

/** Values that programs stumble over. */
const HOSTILE: readonly unknown[] = [
  null, true, 0, -0, -1, 0.5, 1e308, -1e308, Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER + 1, '', ' ', '0', 'NaN', '\u0000', '\ud800', '…', "'; DROP TABLE facts; --",
  '../../etc/passwd', '__proto__', 'constructor', 'x'.repeat(5_000), [], [[]], [null], {}, { __proto__: null }, { toString: 1 }, { length: -1 }, { then: {} },
];
const ODD_KEYS = ['__proto__', 'constructor', 'then', 'toJSON', 'kind', '', 'length', 'x'.repeat(300)] as const;

type Change = (value: unknown) => unknown;

/** A value with something in it replaced, left out, added, doubled or turned into another kind, once to three times. */
export function mutated(values: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  return fc.tuple(values, fc.array(fc.tuple(fc.nat(), changes()), { minLength: 1, maxLength: 3 }))
    .map(([value, steps]) => steps.reduce((before, [where, change]) => changedAt(before, where, change), value));
}

/** The text of a value, sometimes cut, flipped in one place, doubled, or with numbers as JSON does not have them. */
export function texts(values: fc.Arbitrary<unknown>): fc.Arbitrary<string> {
  return fc.tuple(values, fc.nat(9), fc.nat(), fc.nat(255)).map(([value, how, where, byte]) => {
    const text = JSON.stringify(value) ?? '';
    const at = where % (text.length + 1);
    switch (how) {
      case 0: return text.slice(0, at);
      case 1: return `${text.slice(0, at)}${String.fromCodePoint(byte)}${text.slice(at + 1)}`;
      case 2: return `${text}${text}`;
      case 3: return text.replace(/-?\d+(?:\.\d+)?/, ['NaN', '1e999', '-', '01', '.5'][where % 5]!);
      default: return text;
    }
  });
}

function changes(): fc.Arbitrary<Change> {
  return fc.oneof(
    fc.constantFrom(...HOSTILE).map((hostile): Change => () => hostile),
    fc.constant<Change>(() => undefined),
    fc.constantFrom(...ODD_KEYS).chain((key) => fc.constantFrom(...HOSTILE).map((hostile): Change => (value) => withKey(value, key, hostile))),
    fc.constant<Change>((value) => (Array.isArray(value) ? [...value, ...value] : [value])),
    fc.constant<Change>((value) => (typeof value === 'number' ? String(value) : String(JSON.stringify(value)))),
    fc.double().map((number): Change => (value) => (typeof value === 'number' ? number : value)),
  );
}

function withKey(value: unknown, key: string, hostile: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return hostile;
  return JSON.parse(`{${[...Object.entries(value).map(([name, one]) => `${JSON.stringify(name)}:${JSON.stringify(one) ?? 'null'}`), `${JSON.stringify(key)}:${JSON.stringify(hostile) ?? 'null'}`].join(',')}}`) as unknown;
}

/** Changes one of all the places in a value, the whole of it among them. */
function changedAt(value: unknown, where: number, change: Change): unknown {
  const places = placesIn(value, []);
  const place = places[where % places.length]!;
  return replaced(value, place, change);
}

function placesIn(value: unknown, at: readonly (string | number)[]): (readonly (string | number)[])[] {
  if (Array.isArray(value)) return [at, ...value.slice(0, 50).flatMap((item, index) => placesIn(item, [...at, index]))];
  if (typeof value === 'object' && value !== null) return [at, ...Object.entries(value).flatMap(([key, item]) => placesIn(item, [...at, key]))];
  return [at];
}

function replaced(value: unknown, [first, ...rest]: readonly (string | number)[], change: Change): unknown {
  if (first === undefined) return change(value);
  if (Array.isArray(value)) return value.map((item: unknown, index) => (index === first ? replaced(item, rest, change) : item));
  return Object.fromEntries(Object.entries(value as object).map(([key, item]) => [key, key === first ? replaced(item, rest, change) : (item as unknown)]));
}
