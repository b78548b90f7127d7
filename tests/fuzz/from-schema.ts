import * as fc from 'fast-check';

/** As much of JSON Schema as the schemas of the project use. */
export interface Schema {
  readonly type?: 'object' | 'array' | 'string' | 'number' | 'integer' | 'boolean' | 'null';
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly prefixItems?: readonly Schema[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
}

/** Strings that mean something to the server, for where a schema only asks for some text. */
export type Known = readonly string[];

const FEW_ITEMS = 4;
const SHORT = 24;

/** Values that keep to a schema, often with a name that is known. A keyword that is not known here is an error, so that nothing is silently left out. */
export function valuesOf(schema: Schema, known: Known): fc.Arbitrary<unknown> {
  if ('const' in schema) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const branches = schema.anyOf ?? schema.oneOf;
  if (branches !== undefined) return fc.oneof(...branches.map((branch) => valuesOf(branch, known)));
  switch (schema.type) {
    case 'object': return objectsOf(schema, known);
    case 'array': return listsOf(schema, known);
    case 'string': return textsOf(schema, known);
    case 'integer': return fc.integer({ min: schema.minimum ?? -1000, max: Math.min(schema.maximum ?? 1000, 1_000_000) });
    case 'number': return numbersOf(schema);
    case 'boolean': return fc.boolean();
    case 'null': return fc.constant(null);
    default: throw new Error(`The fuzzer does not know how to make ${JSON.stringify(schema)}; teach it.`);
  }
}

function objectsOf({ properties = {}, required = [] }: Schema, known: Known): fc.Arbitrary<unknown> {
  return fc.record(Object.fromEntries(Object.entries(properties).map(([name, schema]) => [name, valuesOf(schema, known)])), { requiredKeys: [...required] });
}

function listsOf({ items, prefixItems, minItems = 0, maxItems = Infinity }: Schema, known: Known): fc.Arbitrary<unknown> {
  if (prefixItems !== undefined) return fc.tuple(...prefixItems.map((schema) => valuesOf(schema, known)));
  return fc.array(valuesOf(items ?? {}, known), { minLength: minItems, maxLength: Math.max(minItems, Math.min(maxItems, FEW_ITEMS)) });
}

function textsOf({ pattern, minLength = 0, maxLength = SHORT }: Schema, known: Known): fc.Arbitrary<string> {
  const free = pattern === undefined ? fc.string({ unit: 'grapheme', minLength, maxLength: Math.max(minLength, Math.min(maxLength, SHORT)) }) : fc.stringMatching(new RegExp(pattern), { maxLength: SHORT });
  const fitting = known.filter((text) => text.length >= minLength && text.length <= maxLength && (pattern === undefined || new RegExp(pattern).test(text)));
  return fitting.length === 0 ? free : fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...fitting) }, { weight: 1, arbitrary: free });
}

function numbersOf({ minimum = -1000, maximum = 1000, exclusiveMinimum }: Schema): fc.Arbitrary<number> {
  return fc.double({ min: exclusiveMinimum === undefined ? minimum : Math.max(minimum, exclusiveMinimum + 1e-6), max: Math.max(maximum, minimum), noNaN: true });
}
