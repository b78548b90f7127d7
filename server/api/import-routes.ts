import { json, raw, Router, type Request, type Response } from 'express';
import { Readable } from 'node:stream';
import { z } from 'zod';
import { choicesSchema, layoutSchema } from '../../core/imports/layout.ts';
import { lacks } from '../../core/imports/lacks.ts';
import { HEAD_BYTES, type LookAnswer } from '../../core/imports/wire.ts';
import type { BroughtImport, CheckAnswer, StoreAnswer, WithdrawAnswer } from '../../core/facts/import-wire.ts';
import type { WhoAsks } from '../access/who-asks.ts';
import { signature } from '../access/who.ts';
import { broughtIn, withdraw } from '../files-in/brought-in.ts';
import { BrokenOff, type Import, type Imports } from '../files-in/imports.ts';
import { lookAt } from '../files-in/look.ts';
import { newRecipeSchema, RecipesUnreadable, renamingSchema, type Recipes } from '../files-in/recipes.ts';
import { refusalsCsv } from '../files-in/report.ts';
import { UnreadableFile } from '../files-in/rows-of.ts';
import type { Ledgers } from '../ledgers.ts';
import type { FactLog } from '../log/fact-log.ts';
import type { OneAtATime } from '../one-at-a-time.ts';
import { readBody } from './read-body.ts';
import { refuse } from './refuse.ts';

export interface ImportParts {
  readonly log: FactLog;
  readonly ledgers: Ledgers;
  readonly imports: Imports;
  /** As they are now. */
  readonly readRecipes: () => Recipes;
  readonly whoAsks: WhoAsks;
  readonly inTurn: OneAtATime;
}

const LARGEST_FILE_BYTES = 64 * 1024 * 1024;
/** Refused rows that the screen shows; all of them are in the list to take along. */
const SHOWN = 50;

export const importSchema = z.strictObject({ name: z.string().trim().min(1).max(200), layout: layoutSchema, choices: choicesSchema });
export const withdrawSchema = z.strictObject({ name: z.string().trim().min(1).max(200).describe('Of the file, said again.') });
export const storeSchema = z.strictObject({ mode: z.enum(['all-or-nothing', 'keep-the-good']) });

const LACK: Readonly<Record<NonNullable<ReturnType<typeof lacks>>, string>> = {
  'no-speed': 'No column is the speed, a path or a whole body; a throw needs one of them.',
  'body-and-columns': 'A whole body has everything of a throw in it; set the columns of speed and path to "not read".',
  'no-day': 'No column says the day; choose the day of all rows.',
  'no-athlete': 'No column says whose the rows are; choose the athlete of all rows.',
};

/** Recorded throws come in: a look at the file, what its columns are, the file itself, and what becomes of its rows. A coach's alone. */
export function importRoutes({ log, ledgers, imports, readRecipes, whoAsks, inTurn }: ImportParts): Router {
  const routes = Router();
  const jsonBody = json({ limit: '512kb' });

  routes.post('/imports/look', raw({ type: () => true, limit: HEAD_BYTES }), (request, response) => lookAt(Buffer.isBuffer(request.body) ? request.body : Buffer.alloc(0)).then((look) => {
    if (look === null) return refuse(response, 400, 'no-rows', '', 'There is no row in this file behind a first line that names its columns; choose a CSV or JSON Lines file.');
    response.json({ ...look, recipe: recipeFor(look.shape) } satisfies LookAnswer);
  }));
  routes.post('/imports', jsonBody, (request, response) => {
    const said = readBody(importSchema, request, response);
    if (said === null) return;
    const lack = lacks(said.layout, said.choices);
    if (lack !== null) return refuse(response, 400, lack, 'layout.columns', LACK[lack]);
    response.status(201).json({ id: imports.begin(said).id });
  });
  routes.put('/imports/:id/file', (request, response) => withImport(request, response, async (under) => {
    const { report, refusals } = await imports.read(under, upTo(request, LARGEST_FILE_BYTES));
    response.json({ ...report, shown: [...refusals(SHOWN)] } satisfies CheckAnswer);
  }));
  routes.get('/imports/:id/refused.csv', (request, response) => withImport(request, response, (under) => {
    if (under.checked === null) return notYet(response);
    response.set({ 'Content-Type': 'text/csv; charset=utf-8', 'Content-Disposition': 'attachment; filename="offpace-refused-rows.csv"' });
    Readable.from(refusalsCsv(under.checked.refusals())).pipe(response);
  }));
  routes.post('/imports/:id/store', jsonBody, (request, response) => withImport(request, response, async (under) => {
    const said = readBody(storeSchema, request, response);
    if (said === null) return;
    const { checked, breaking } = under;
    if (checked === null) return notYet(response);
    const reply = await inTurn(() => {
      breaking.signal.throwIfAborted();
      return checked.store(said.mode, signature(whoAsks(request)), breaking.signal);
    });
    switch (reply.kind) {
      case 'stored':
        imports.end(under.id);
        return void response.json(reply satisfies StoreAnswer);
      case 'broken-off': return void response.json(reply satisfies StoreAnswer);
      case 'failed': return refuse(response, 503, 'storage-failed', '', reply.sentence);
      case 'refused': return refuse(response, 409, reply.code, '', reply.sentence);
    }
  }));
  routes.delete('/imports/:id', (request, response) => {
    if (imports.end(request.params.id)) response.status(204).end();
    else unknownImport(response);
  });

  routes.get('/imports', (_, response) => void response.json(broughtIn(ledgers.all()) satisfies BroughtImport[]));
  routes.post('/imports/:id/withdraw', jsonBody, (request, response) => {
    const said = readBody(withdrawSchema, request, response);
    if (said === null) return;
    return inTurn(() => withdraw(log, ledgers.all(), request.params.id, said.name, signature(whoAsks(request)))).then((reply) => {
      switch (reply.kind) {
        case 'withdrawn': return void response.json(reply satisfies WithdrawAnswer);
        case 'failed': return refuse(response, 503, 'storage-failed', '', reply.sentence);
        case 'refused': return refuse(response, reply.code === 'no-such-import' ? 404 : 409, reply.code, reply.code === 'no-such-import' ? 'id' : 'name', reply.sentence);
      }
    });
  });

  routes.get('/recipes', (_, response) => withRecipes(response, ({ all }) => void response.json(all)));
  routes.post('/recipes', jsonBody, (request, response) => withRecipes(response, (recipes) => {
    const said = readBody(newRecipeSchema, request, response);
    if (said !== null) response.status(201).json(recipes.keep(said.name, said.layout));
  }));
  routes.patch('/recipes/:id', jsonBody, (request, response) => withRecipes(response, (recipes) => {
    const said = readBody(renamingSchema, request, response);
    if (said === null) return;
    const renamed = recipes.rename(request.params.id, said.name);
    if (renamed === null) unknownRecipe(response);
    else response.json(renamed);
  }));
  routes.delete('/recipes/:id', (request, response) => withRecipes(response, (recipes) => {
    if (recipes.remove(request.params.id)) response.status(204).end();
    else unknownRecipe(response);
  }));
  return routes;

  /** A file can come in without its recipe; that of recipes nothing can be read, is said where they are listed. */
  function recipeFor(shape: string): LookAnswer['recipe'] {
    const recipes = readOrWhyNot();
    return typeof recipes === 'string' ? null : recipes.forShape(shape);
  }

  /** What is changed is what was read: nothing else is answered in between. */
  function withRecipes(response: Response, act: (recipes: Recipes) => void): void {
    const recipes = readOrWhyNot();
    if (typeof recipes === 'string') refuse(response, 503, 'unreadable-recipes', '', recipes);
    else act(recipes);
  }

  function readOrWhyNot(): Recipes | string {
    try {
      return readRecipes();
    } catch (error) {
      if (error instanceof RecipesUnreadable) return error.message;
      throw error;
    }
  }

  async function withImport(request: Request, response: Response, act: (under: Import) => Promise<void> | void): Promise<void> {
    const under = imports.of(String(request.params['id']));
    if (under === undefined) return unknownImport(response);
    try {
      await act(under);
    } catch (error) {
      if (error instanceof UnreadableFile) return refuse(response, 400, 'unreadable-file', '', error.message);
      // Whoever has gone away is answered nothing.
      if (request.destroyed && !request.complete) return void imports.end(under.id);
      if (error instanceof BrokenOff) return refuse(response, 409, 'broken-off', '', 'The import was broken off.');
      throw error;
    }
  }
}

async function* upTo(bytes: AsyncIterable<Uint8Array>, most: number): AsyncGenerator<Uint8Array> {
  let seen = 0;
  for await (const chunk of bytes) {
    seen += chunk.length;
    if (seen > most) throw new UnreadableFile(`The file has more than ${most / 1024 / 1024} MB; part it, or import it with "offpace import" while the server is stopped.`);
    yield chunk;
  }
}

function notYet(response: Response): void {
  refuse(response, 409, 'not-read-yet', 'id', 'The file of this import was not read yet; send it first.');
}

function unknownImport(response: Response): void {
  refuse(response, 404, 'unknown-import', 'id', 'There is no such import under way any more; choose the file again.');
}

function unknownRecipe(response: Response): void {
  refuse(response, 404, 'unknown-recipe', 'id', 'There is no such recipe; the list has those there are.');
}
