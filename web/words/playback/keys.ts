import { inBoth } from '../in-both.ts';

/** The keys of Playback, and what each does. */
export const keys = inBoth(
  {
    groups: { move: 'Moving through the session', show: 'What is shown', say: 'Marking and sharing', video: 'Video', two: 'Two sessions' },
    does: {
      play: 'play or pause', step: 'previous or next throw', rate: 'faster or slower', ends: 'first or newest fact', live: 'back to live',
      part: 'over and over from here, to here', whole: 'play it all again',
      windows: 'windows of the last throws', seamMap: 'seam map of the throw', gapLine: 'gap line of the throw', plate: 'plate seen by the catcher', numbers: 'numbers of the throw', notes: 'notes and bookmarks', video: 'video of the throw', hold: 'hold this throw against another',
      bookmark: 'bookmark this throw, or take it off', write: 'write a note', copy: 'copy a link to this throw',
      frame: 'a frame back or on', release: 'this frame is the release',
      other: 'the keys move the other session', together: 'move both together', over: 'lay their two throws over each other', keys: 'this list',
    },
  },
  {
    groups: { move: 'Moverse por la sesión', show: 'Lo que se muestra', say: 'Marcar y compartir', video: 'Video', two: 'Dos sesiones' },
    does: {
      play: 'reproducir o pausar', step: 'tiro anterior o siguiente', rate: 'más rápido o más lento', ends: 'primer hecho o el más nuevo', live: 'volver al vivo',
      part: 'una y otra vez desde aquí, hasta aquí', whole: 'reproducir todo otra vez',
      windows: 'ventanas de los últimos tiros', seamMap: 'mapa de costuras del tiro', gapLine: 'línea de distancia del tiro', plate: 'home visto por el receptor', numbers: 'números del tiro', notes: 'notas y marcas', video: 'video del tiro', hold: 'comparar este tiro con otro',
      bookmark: 'marcar este tiro, o quitar la marca', write: 'escribir una nota', copy: 'copiar un enlace a este tiro',
      frame: 'un cuadro atrás o adelante', release: 'este cuadro es la salida',
      other: 'las teclas mueven la otra sesión', together: 'mover las dos juntas', over: 'poner sus dos tiros uno sobre otro', keys: 'esta lista',
    },
  },
);
