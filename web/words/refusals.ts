import type { Language } from './language.ts';

/** A refusal as it reaches a screen. */
export interface Refused {
  readonly code: string;
  readonly sentence: string;
}

/** How a refusal is said to a viewer. */
export interface RefusalSaid {
  readonly said: string;
  /** The server's own sentence, which names what it is about; it speaks English. Null where it is what is said. */
  readonly inEnglish: string | null;
}

/** What the server refuses, by its code. A code without a text here says the server's sentence, and a test finds it. */
export const IN_SPANISH: Readonly<Record<string, string>> = {
  'body-and-columns': 'Un cuerpo entero ya trae todo lo de un tiro; ponga las columnas de velocidad y trayectoria en «no se lee».',
  'body-differs': 'Este tiro ya está guardado con otros datos.',
  'broken-off': 'La importación se interrumpió.',
  'day-known': 'Esa comparación ya tiene esta sesión.',
  foreign: 'Abra el servidor por la dirección que él mismo muestra.',
  impossible: 'Un tiro no puede ser así; revise las unidades de las columnas.',
  internal: 'El servidor tuvo una falla propia; lo lanzado está a salvo.',
  known: 'Este tiro ya se importó antes; no se importa dos veces.',
  'known-meanwhile': 'Alguien importó algunos de estos tiros entretanto; revise el archivo de nuevo.',
  'link-over': 'Este código ya se usó o venció; pida uno nuevo al entrenador.',
  malformed: 'Algo de lo dicho no se puede leer; revíselo y dígalo otra vez.',
  'moved-since': 'Alguien movió uno de los tiros entretanto; vea dónde está antes de moverlo.',
  'needs-tls': 'A este servidor solo se llega por TLS; use https.',
  'no-answer': 'El servidor no respondió y no se sabe si se guardó. Revise la red y dígalo otra vez.',
  'no-athlete': 'Ninguna columna dice de quién son los tiros; elija el atleta de todos.',
  'no-day': 'Falta el día; elija la columna que lo dice o el día de todos los tiros.',
  'no-pain-reported': 'No hay ningún dolor sin respuesta.',
  'no-passphrase': 'A este servidor solo llega esta máquina; quien está en ella es entrenador y nadie entra con frase.',
  'no-rows': 'En este archivo no hay filas tras una primera línea que nombre las columnas; elija un archivo CSV o JSON Lines.',
  'no-screens': 'Las pantallas aún no están construidas en el servidor.',
  'no-speed': 'Falta la velocidad; sin ella un tiro no se puede comparar con la recta.',
  'no-such-baseline': 'Esa sesión no tiene esa recta base en esta etapa.',
  'no-such-comparison': 'No existe esa comparación; ábrala primero.',
  'no-such-note': 'Esa nota no existe, o ya se retiró.',
  'no-such-trial': 'Esa sesión no tiene ese ensayo; empiécelo primero.',
  'no-target': 'Esta etapa no tiene zona de blanco que quitar.',
  'no-throw-there': 'Uno de los tiros elegidos ya no está en este montículo.',
  'no-view': 'El servidor no puede mostrar este montículo; lo lanzado está a salvo.',
  'not-a-mound': 'Eso no puede nombrar un montículo; use letras, cifras, guiones, puntos o guiones bajos.',
  'not-a-place': 'Eso no es un lugar de la grabación; lo que sigue se pide con un número.',
  'not-a-question': 'Esa búsqueda no se puede leer; quite una condición.',
  'not-json': 'Esta línea no es un objeto JSON.',
  'not-let-in': 'Aquí no ha entrado nadie; cargue la página de nuevo para entrar, o pida un código al entrenador.',
  'not-of-this-session': 'Uno de los tiros elegidos ya no es de esta sesión; muévalo aquí primero.',
  'not-read-yet': 'El archivo de esta importación aún no se leyó; envíelo primero.',
  'not-the-next-number': 'Otra comparación se abrió entretanto; ábrala de nuevo.',
  'not-theirs-to-say': 'Esto no se dice desde esta pantalla.',
  'not-theirs-to-see': 'Esta pantalla no puede ver eso; un entrenador que haya entrado sí.',
  'nothing-good': 'Ninguna fila del archivo se puede importar; la lista dice por qué.',
  'nothing-to-correct': 'No está guardado el tiro que se quiere corregir.',
  'nothing-unclaimed': 'Ya no queda ningún tiro sin dueño hasta ahí.',
  'one-trial': 'Un ensayo no se compara consigo mismo; elija otro.',
  'other-athlete': 'Una comparación es de un solo atleta.',
  'other-name': 'Ese no es el nombre del atleta, así que no se borró nada; escríbalo como está en la lista de atletas.',
  ragged: 'Esta línea no tiene tantas columnas como el encabezado; busque un separador de más o una comilla sin cerrar.',
  'refused-before': 'Esto ya fue rechazado antes.',
  'request-differs': 'Esto ya se dijo con otras palabras; dígalo de nuevo.',
  'rows-refused': 'Hay filas rechazadas, así que no se importó nada; corrija el archivo o guarde las buenas.',
  'session-closed': 'La sesión está cerrada; abra otra para seguir.',
  'session-known': 'Ya hay una sesión con ese nombre; ábrala de nuevo.',
  'session-open': 'Hay una sesión abierta de este atleta, así que no se borró nada; ciérrela primero.',
  'storage-failed': 'El servidor no pudo escribir en su disco; no se guardó nada. Revise el disco y dígalo otra vez.',
  'too-fast': 'Esta pantalla pide mucho más de lo que puede una persona; espere unos segundos y dígalo otra vez.',
  'too-few-fastballs': 'Una recta base necesita cinco rectas de esta etapa.',
  'too-many-attempts': 'Hubo demasiados intentos; pruebe más tarde.',
  'too-many-screens': 'Esta máquina ya tiene abiertas todas las pantallas que puede; cierre algunas y cargue la página de nuevo.',
  'unknown-address': 'El servidor no tiene nada en esa dirección.',
  'unknown-athlete': 'No hay ningún atleta con ese nombre en la dirección; la lista tiene los que hay.',
  'unknown-code': 'Ese código ya no existe; pida uno nuevo.',
  'unknown-grant': 'No hay nadie con ese nombre; la lista tiene a quienes hay.',
  'unknown-id': 'Nada aquí puede llamarse así; las listas tienen los nombres que hay.',
  'no-such-import': 'Esa importación ya no cuenta aquí; la lista dice cuáles sí.',
  'other-file-name': 'El archivo de esa importación se llama de otro modo; no se retiró nada.',
  'unknown-import': 'Esa importación ya no está en curso; elija el archivo de nuevo.',
  'unknown-recipe': 'No existe esa receta; la lista tiene las que hay.',
  'unknown-session': 'No hay ninguna sesión con ese nombre; la lista tiene las que hay.',
  'unreadable-recording': 'Esto no se puede mostrar: lo que dio el servidor no cuadra. Intente otra vez; si sigue así, dé la dirección de esta página a quien cuida el servidor.',
  'unknown-time-zone': 'El servidor no conoce la zona horaria de este aparato.',
  unreadable: 'Lo que dice esta casilla no se puede leer como lo que es su columna.',
  'unreadable-recipes': 'Las recetas no se pueden leer: su archivo, import-recipes.json en la carpeta de datos, está dañado. Repárelo o apártelo para empezar sin ninguna; mientras tanto queda como está, y no se usa ni se guarda ninguna receta.',
  'unreadable-file': 'El archivo no se puede leer hasta el final.',
  'wrong-passphrase': 'Esa no es la frase de acceso de este servidor.',
};

/** A refusal in the viewer's language; where that is not the server's, its own sentence goes with it. */
export function refusalSaid({ code, sentence }: Refused, language: Language): RefusalSaid {
  const said = language === 'es' ? IN_SPANISH[code] : undefined;
  return said === undefined ? { said: sentence, inEnglish: null } : { said, inEnglish: sentence };
}
