import { inBoth } from './in-both.ts';

/** What a screen says of itself when it can show nothing any more. */
export const fault = inBoth(
  {
    title: 'This screen met a fault of its own.',
    safe: 'What was thrown and said is safe on the server.',
    loadAnew: 'Load this screen anew',
    bySelf: 'It loads itself anew in half a minute.',
    home: 'To all mounds',
    unloaded: 'This screen could not be loaded.',
    onceAnswered: 'It loads itself as soon as the server answers.',
  },
  {
    title: 'Esta pantalla tuvo una falla propia.',
    safe: 'Lo lanzado y lo dicho está a salvo en el servidor.',
    loadAnew: 'Cargar esta pantalla de nuevo',
    bySelf: 'Se carga sola de nuevo en medio minuto.',
    home: 'A todos los montículos',
    unloaded: 'Esta pantalla no se pudo cargar.',
    onceAnswered: 'Se carga sola en cuanto responda el servidor.',
  },
);
