import { inBoth } from '../in-both.ts';

/** Two sessions side by side. */
export const beside = inBoth(
  {
    together: 'Move both together',
    over: 'Lay their throws over each other',
    overNone: 'Before both sessions have a throw there is nothing to lay over each other.',
    alone: 'Only this session',
    number: (index: string, athlete: string, date: string) => `${index}: ${athlete}, ${date}`,
    controls: (index: string) => `Playback controls ${index}`,
    keysMove: 'the keys move this one',
    title: (one: string, other: string) => `${one} beside ${other}`,
  },
  {
    together: 'Mover las dos juntas',
    over: 'Poner sus tiros uno sobre otro',
    overNone: 'Hasta que las dos sesiones tengan un tiro no hay nada que poner encima.',
    alone: 'Solo esta sesión',
    number: (index, athlete, date) => `${index}: ${athlete}, ${date}`,
    controls: (index) => `Controles de la repetición ${index}`,
    keysMove: 'las teclas mueven esta',
    title: (one, other) => `${one} junto a ${other}`,
  },
);
