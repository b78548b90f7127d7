import { inBoth } from './in-both.ts';

/** When the athlete is shown a throw, why, where that comes from, and how sure that is. */
export const feedback = inBoth(
  {
    mode: { 'every-throw': 'every throw', 'outside-band': 'outside the zone only', summary: (after: number) => `summary after ${after}`, fading: 'fading', none: 'none' },
    silence: 'Silence means good.',
    line: (mode: string) => `Feedback: ${mode}.`,
    asked: 'You say first, then the numbers come.',
    why: {
      'every-throw': 'It helps while it is there, and can be leaned on',
      'outside-band': 'It fades by itself as skill grows',
      summary: 'Fewer words look worse in practice and better later',
      fading: 'Fewer words look worse in practice and better later',
      none: 'Practice is not learning: a set without it shows what stays',
    },
    source: { 'schmidt-1989-winstein-1990': 'Schmidt 1989, Winstein 1990', 'sherwood-1988-cruz-2018': 'Sherwood 1988, Cruz 2018', 'practice-is-not-learning': 'agreed among researchers' },
    sure: { 'old-small-tasks': 'old, small laboratory tasks', plausible: 'plausible, small studies', agreed: 'sure' },
    basis: (why: string, source: string, sure: string) => `${why} (${source}; ${sure}).`,
  },
  {
    mode: { 'every-throw': 'cada tiro', 'outside-band': 'solo fuera de la zona', summary: (after) => `resumen tras ${after}`, fading: 'cada vez menos', none: 'ninguno' },
    silence: 'El silencio es buena señal.',
    line: (mode) => `Comentarios: ${mode}.`,
    asked: 'Primero dices tú, luego vienen los números.',
    why: {
      'every-throw': 'Ayuda mientras está, y uno puede apoyarse en ello',
      'outside-band': 'Se apaga solo al crecer la destreza',
      summary: 'Menos palabras parecen peor al practicar y mejor después',
      fading: 'Menos palabras parecen peor al practicar y mejor después',
      none: 'Practicar no es aprender: una serie sin ello muestra lo que queda',
    },
    source: { 'schmidt-1989-winstein-1990': 'Schmidt 1989, Winstein 1990', 'sherwood-1988-cruz-2018': 'Sherwood 1988, Cruz 2018', 'practice-is-not-learning': 'acuerdo entre investigadores' },
    sure: { 'old-small-tasks': 'estudios viejos y pequeños', plausible: 'plausible, estudios pequeños', agreed: 'seguro' },
    basis: (why, source, sure) => `${why} (${source}; ${sure}).`,
  },
);
