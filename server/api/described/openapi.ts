import { z } from 'zod';
import { ANSWERS, type AnswerName } from './answers.ts';
import { OPERATIONS, type Operation } from './operations.ts';

type Json = Readonly<Record<string, unknown>>;

/** What /api can be asked, as an OpenAPI 3.1 document: the schemas are those that the server checks with. */
export function openapiDocument(): Json {
  const paths: Record<string, Record<string, Json>> = {};
  for (const operation of OPERATIONS) (paths[templated(operation.path)] ??= {})[operation.method] = described(operation);
  return {
    openapi: '3.1.0',
    info: { title: 'Offpace over HTTP', version: '1.0.0', description: 'What a server of Offpace can be asked besides live views and devices. What is given out holds records of minors: docs/exports.md. Words: docs/words.md.', license: { name: 'MIT', identifier: 'MIT' } },
    servers: [{ url: 'http://127.0.0.1:8080/api', description: 'The server prints its address when it starts.' }],
    paths,
    components: {
      schemas: answerSchemas(),
      securitySchemes: { coach: { type: 'apiKey', in: 'cookie', name: 'offpace-coach', description: 'Given by /sign-in; over TLS its name begins with __Host-. On a server that only its own machine reaches, whoever sits there is coach.' } },
    },
  };
}

function described({ method, path, summary, who, asks, sends, sendsFile, answers, refuses = [] }: Operation): Json {
  const refusals = [...new Set([...refuses, ...(who === 'coach' ? [401, 403] : []), ...(/:id/.test(path) ? [404] : [])])].toSorted();
  const parameters = [...inPath(path), ...(asks === undefined ? [] : inQuestion(asks))];
  return {
    operationId: [method, ...path.split('/').filter((part) => part !== '').map((part) => part.replace(/^:/, 'by-'))].join('-').replace('.', '-'),
    summary,
    security: who === 'coach' ? [{ coach: [] }] : [],
    ...(parameters.length > 0 && { parameters }),
    ...(sends !== undefined && { requestBody: { required: true, content: { 'application/json': { schema: jsonSchema(sends) } } } }),
    ...(sendsFile === true && { requestBody: { required: true, content: { 'application/octet-stream': {} } } }),
    responses: {
      [String(answers.status)]: answered(answers),
      ...Object.fromEntries(refusals.map((status) => [String(status), { description: 'Refused: why, and what to do.', content: { 'application/json': { schema: ref('Refusal') } } }])),
    },
  };
}

function answered(answers: Operation['answers']): Json {
  if ('nothing' in answers) return { description: 'Done.' };
  if ('file' in answers) return { description: 'A file.', content: Object.fromEntries(answers.file.map((type) => [type, type === 'application/json' ? { schema: { type: 'object' } } : {}])) };
  return { description: 'The answer.', content: { 'application/json': { schema: answers.list === true ? { type: 'array', items: ref(answers.is) } : ref(answers.is) } } };
}

function inPath(path: string): Json[] {
  return [...path.matchAll(/:(\w+)/g)].map(([, name]) => ({ name, in: 'path', required: true, schema: name === 'place' ? { type: 'integer', minimum: 0 } : { type: 'string', pattern: '^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$' } }));
}

function inQuestion(asks: z.ZodObject): Json[] {
  const { properties = {} } = jsonSchema(asks) as { readonly properties?: Readonly<Record<string, Json>> };
  return Object.entries(properties).map(([name, { description, ...schema }]) => ({ name, in: 'query', ...(description !== undefined && { description }), schema }));
}

const addressOf = (name: string): string => `#/components/schemas/${name}`;

function ref(name: AnswerName): Json {
  return { $ref: addressOf(name) };
}

/** One that is part of another stands there by its name. */
function answerSchemas(): Json {
  const named = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(ANSWERS)) named.add(schema, { id });
  const { schemas } = z.toJSONSchema(named, { uri: addressOf, io: 'output' });
  return Object.fromEntries(Object.entries(schemas).map(([name, schema]) => [name, withoutNames(schema)]));
}

function jsonSchema(schema: z.ZodType): Json {
  return withoutNames(z.toJSONSchema(schema, { io: 'input' }));
}

/** The document says itself which draft it is in, and where each schema stands. */
function withoutNames(schema: Json): Json {
  const { $schema: _, $id: __, ...rest } = schema;
  return rest;
}

function templated(path: string): string {
  return path.replaceAll(/:(\w+)/g, '{$1}');
}
