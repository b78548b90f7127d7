import { readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { layoutSchema, type Layout } from '../../core/imports/layout.ts';
import type { Recipe } from '../../core/imports/wire.ts';
import { writeWhole } from '../access/write-whole.ts';
import { newShortId } from '../chance.ts';
import { asSentence, complaint } from '../complaint.ts';
import { shapeOf } from './look.ts';

const nameSchema = z.string().trim().min(1).max(60);
export const newRecipeSchema = z.strictObject({ name: nameSchema, layout: layoutSchema });
export const renamingSchema = z.strictObject({ name: nameSchema });
export const recipeSchema = z.strictObject({ id: z.string(), name: nameSchema, shape: z.string(), layout: layoutSchema });
const fileSchema = z.strictObject({ version: z.literal(1), recipes: z.array(recipeSchema) });

/** `import-recipes.json` is there and says no recipes. It is left as it is: nothing is kept over it. */
export class RecipesUnreadable extends Error {}

/** The recipes of a data folder as `import-recipes.json` had them when it was read. What is changed is written at once, and here once the file is read again. */
export interface Recipes {
  readonly all: readonly Recipe[];
  /** Of files of this shape; the newest where there are several. */
  forShape(shape: string): Recipe | null;
  /** In place of one of the same name. */
  keep(name: string, layout: Layout): Recipe;
  /** Null where there is none with this id. */
  rename(id: string, name: string): Recipe | null;
  remove(id: string): boolean;
}

/** @throws {RecipesUnreadable} where the file is there and cannot be read */
export function readRecipes(folder: string): Recipes {
  const file = path.join(folder, 'import-recipes.json');
  const all = read();

  function read(): readonly Recipe[] {
    const checked = fileSchema.safeParse(written());
    if (checked.success) return checked.data.recipes;
    const { path: where, sentence } = complaint(checked.error);
    throw unreadable(where === '' ? sentence : `At ${where}: ${sentence}`);
  }

  /** Where there is no file, as if it were there and empty. */
  function written(): unknown {
    try {
      return JSON.parse(readFileSync(file, 'utf8'));
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return { version: 1, recipes: [] };
      throw unreadable(error instanceof SyntaxError ? `It is not JSON: ${asSentence(error.message)}` : asSentence((error as Error).message));
    }
  }

  function unreadable(why: string): RecipesUnreadable {
    return new RecipesUnreadable(`The recipes in ${file} cannot be read. ${why} Mend the file, or move it away to begin with none; until then it stays as it is, and no recipe is used or kept.`);
  }

  function write(recipes: readonly Recipe[]): void {
    writeWhole(file, `${JSON.stringify({ version: 1, recipes }, null, 1)}\n`);
  }

  return {
    all,
    forShape: (shape) => all.findLast((recipe) => recipe.shape === shape) ?? null,
    keep(name, layout) {
      const recipe = { id: newShortId(), name, shape: shapeOf(layout.columns.map(({ header }) => header)), layout };
      write([...all.filter((one) => one.name !== name), recipe]);
      return recipe;
    },
    rename(id, name) {
      const known = all.find((one) => one.id === id);
      if (known === undefined) return null;
      const renamed = { ...known, name };
      write(all.map((one) => (one.id === id ? renamed : one)));
      return renamed;
    },
    remove(id) {
      const left = all.filter((one) => one.id !== id);
      if (left.length === all.length) return false;
      write(left);
      return true;
    },
  };
}
