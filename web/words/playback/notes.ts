import { inBoth } from '../in-both.ts';

/** Notes and bookmarks of a recording, made live or any time after. */
export const notes = inBoth(
  {
    title: 'Notes and bookmarks',
    onThrow: (thrown: string) => `Note on ${thrown.toLowerCase()}`,
    onSession: 'Note on the session',
    aboutSession: 'About the session, not this throw',
    save: 'Save note',
    none: 'Nothing was written or marked yet. A note or a bookmark made here is kept with the session, like one that was made while it was thrown.',
    bookmark: 'Bookmark',
    takeOff: (thrown: string) => `Take the bookmark off ${thrown.toLowerCase()}`,
    session: 'Session',
    later: (when: string) => `written ${when}, after the session`,
    refused: 'Not stored:',
  },
  {
    title: 'Notas y marcas',
    onThrow: (thrown) => `Nota del ${thrown.toLowerCase()}`,
    onSession: 'Nota de la sesión',
    aboutSession: 'De la sesión, no de este tiro',
    save: 'Guardar nota',
    none: 'Aún no se escribió ni marcó nada. Una nota o marca hecha aquí queda con la sesión, como las que se hacen mientras se lanza.',
    bookmark: 'Marca',
    takeOff: (thrown) => `Quitar la marca del ${thrown.toLowerCase()}`,
    session: 'Sesión',
    later: (when) => `escrita el ${when}, después de la sesión`,
    refused: 'No se guardó:',
  },
);
