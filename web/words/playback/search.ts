import { inBoth } from '../in-both.ts';

/** Looking for recorded sessions. */
export const search = inBoth(
  {
    title: 'Find sessions',
    fields: { athlete: 'Athlete', from: 'From', to: 'To', stage: 'Stage', trial: 'Trial: letter, grip or cue', note: 'Words of a note' },
    anyStage: 'any',
    clear: 'Clear all',
    found: (count: number) => (count === 1 ? '1 session' : `${count} sessions`),
    nothing: 'No session matches all of this.',
    without: (field: string, count: string) => `Without “${field}”: ${count}`,
    nothingWhy: 'A day counts in the time zone of the mound. In a trial and in a note every word has to be there, in any order; accents and capitals do not matter.',
    more: (count: number) => `Show ${count} more`,
    notes: (count: number) => (count === 1 ? '1 note' : `${count} notes`),
    imported: (file: string, date: string) => `From ${file}, imported ${date}`,
    bookmarks: (count: number) => (count === 1 ? '1 bookmark' : `${count} bookmarks`),
    choose: 'Choose the session to put beside',
    back: 'Back to the session',
  },
  {
    title: 'Buscar sesiones',
    fields: { athlete: 'Atleta', from: 'Desde', to: 'Hasta', stage: 'Etapa', trial: 'Ensayo: letra, agarre o clave', note: 'Palabras de una nota' },
    anyStage: 'cualquiera',
    clear: 'Borrar todo',
    found: (count) => (count === 1 ? '1 sesión' : `${count} sesiones`),
    nothing: 'Ninguna sesión cumple todo esto.',
    without: (field, count) => `Sin «${field}»: ${count}`,
    nothingWhy: 'El día es el de la zona horaria del montículo. En un ensayo y en una nota tienen que estar todas las palabras, en cualquier orden; no importan acentos ni mayúsculas.',
    more: (count) => `Mostrar ${count} más`,
    notes: (count) => (count === 1 ? '1 nota' : `${count} notas`),
    imported: (file, date) => `De ${file}, importada el ${date}`,
    bookmarks: (count) => (count === 1 ? '1 marca' : `${count} marcas`),
    choose: 'Elija la sesión que va junto a',
    back: 'Volver a la sesión',
  },
);
