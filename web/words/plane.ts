import { inBoth } from './in-both.ts';

/** What the separation plane says, on every screen that draws it. */
export const plane = inBoth(
  {
    noThrow: 'Ready for the first throw',
    noBaseline: 'No fastball yet to hold this against',
    seenFromMound: 'seen from the mound',
    name: 'Separation from the fastball',
    fastball: 'fastball',
    down: 'down',
    empty: 'No throw is drawn yet.',
    description: (said: string) => `Movement of each throw against the athlete's own fastball, which lies at the origin, seen from the mound. ${said}`,
    lastThrow: (what: string, where: string) => `Last throw, ${what}: ${where}.`,
    marks: (count: number, hits: number) => `${count} drawn, ${hits} on target.`,
    spread: (count: number) => `95 % of the last ${count}`,
  },
  {
    noThrow: 'Listo para el primer tiro',
    noBaseline: 'Aún sin recta con que comparar',
    seenFromMound: 'desde el montículo',
    name: 'Separación de la recta',
    fastball: 'recta',
    down: 'abajo',
    empty: 'Aún no hay tiros.',
    description: (said) => `Movimiento de cada tiro frente a la recta propia, que está en el origen, visto desde el montículo. ${said}`,
    lastThrow: (what, where) => `Último tiro, ${what}: ${where}.`,
    marks: (count, hits) => `${count} dibujados, ${hits} en el blanco.`,
    spread: (count) => `95 % de los últimos ${count}`,
  },
);
