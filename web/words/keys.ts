import { inBoth } from './in-both.ts';

/** The list of keys of a screen, and the keys that have a name. */
export const keys = inBoth(
  {
    title: 'Keys',
    open: 'Keys of this screen',
    close: 'Close',
    act: 'Single keys act on this device. They never do while something is typed.',
    named: { ' ': 'space', ArrowLeft: '←', ArrowRight: '→', ArrowUp: '↑', ArrowDown: '↓', Escape: 'Esc', Home: 'Home', End: 'End' },
  },
  {
    title: 'Teclas',
    open: 'Teclas de esta pantalla',
    close: 'Cerrar',
    act: 'Las teclas sueltas actúan en este aparato. Nunca mientras se escribe algo.',
    named: { ' ': 'espacio', ArrowLeft: '←', ArrowRight: '→', ArrowUp: '↑', ArrowDown: '↓', Escape: 'Esc', Home: 'Inicio', End: 'Fin' },
  },
);
