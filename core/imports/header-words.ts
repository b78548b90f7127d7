import type { Field, Side } from './fields.ts';

/**
 * Plain words of the trade that name a field in the head of a column, in English and Spanish: each line is a set of words that
 * must all be there. No maker's names for columns are in here, and none belong here.
 */
export const NAMED: Readonly<Record<Field, readonly string[]>> = {
  releaseSpeed: ['release speed', 'release velocity', 'speed', 'velocity', 'velocidad', 'velocidad salida', 'velocidad lanzamiento'],
  plateSpeed: ['plate speed', 'plate velocity', 'arrival speed', 'velocidad plato', 'velocidad llegada'],
  spinRate: ['spin rate', 'spin', 'rpm', 'giro', 'rotacion', 'revoluciones'],
  tilt: ['tilt', 'spin tilt', 'spin direction', 'spin clock', 'inclinacion', 'inclinacion giro', 'direccion giro'],
  efficiency: ['efficiency', 'spin efficiency', 'eficiencia', 'eficiencia giro'],
  verticalBreak: ['induced vertical break', 'vertical break', 'induced vertical movement', 'vertical movement', 'quiebre vertical', 'quiebre vertical inducido', 'movimiento vertical', 'movimiento vertical inducido'],
  horizontalBreak: ['horizontal break', 'horizontal movement', 'side break', 'quiebre horizontal', 'movimiento horizontal', 'quiebre lateral', 'movimiento lateral'],
  releaseHeight: ['release height', 'altura salida', 'altura suelta', 'altura liberacion'],
  releaseSide: ['release side', 'side release', 'lado salida', 'lado suelta', 'lado liberacion'],
  releaseDistance: ['release distance', 'distancia salida', 'distancia suelta'],
  extension: ['extension'],
  flightTime: ['flight time', 'time flight', 'tiempo vuelo'],
  plateHeight: ['plate height', 'altura plato'],
  plateSide: ['plate side', 'lado plato'],
  armSpeed: ['arm speed', 'hand speed', 'velocidad brazo', 'velocidad mano'],
  intent: ['pitch kind', 'pitch type', 'pitch', 'kind', 'type', 'intent', 'tipo lanzamiento', 'tipo', 'lanzamiento', 'clase'],
  trial: ['trial', 'cue', 'ensayo', 'indicacion'],
  athlete: ['athlete', 'pitcher', 'player', 'name', 'pitcher name', 'player name', 'athlete name', 'atleta', 'lanzador', 'jugador', 'nombre'],
  mound: ['mound', 'bullpen', 'monticulo', 'loma'],
  session: ['session', 'sesion'],
  moment: ['date time', 'time stamp', 'timestamp', 'datetime', 'moment', 'fecha hora', 'momento'],
  date: ['date', 'day', 'fecha', 'dia'],
  time: ['time', 'time day', 'hour', 'hora'],
  path: ['path', 'samples', 'trayectoria', 'muestras'],
  body: ['body'],
};

/** How units are written in the head of a column or behind a number. */
export const UNIT_WORDS: Readonly<Record<string, string>> = {
  mph: 'mph', kmh: 'km/h', kph: 'km/h', mps: 'm/s', fps: 'ft/s',
  in: 'in', inch: 'in', inches: 'in', pulgada: 'in', pulgadas: 'in', cm: 'cm', centimetres: 'cm', centimeters: 'cm', centimetros: 'cm',
  m: 'm', metres: 'm', meters: 'm', metros: 'm', ft: 'ft', feet: 'ft', foot: 'ft', pie: 'ft', pies: 'ft',
  rpm: 'rpm', deg: 'deg', degrees: 'deg', grados: 'deg', clock: 'clock', reloj: 'clock', percent: 'percent', pct: 'percent', porcentaje: 'percent', share: 'share',
  ms: 'ms', milliseconds: 'ms', milisegundos: 'ms', s: 's', sec: 's', seconds: 's', segundos: 's',
};

const SIDE_WORDS: readonly (readonly [word: string, side: Side])[] = [
  ['arm', 'arm'], ['brazo', 'arm'], ['glove', 'glove'], ['guante', 'glove'], ['right', 'right'], ['derecha', 'right'], ['left', 'left'], ['izquierda', 'left'],
];

/** The words of a header, small and without accents: "ReleaseSpeed (km/h)" is release, speed, kmh. */
export function wordsOf(header: string): string[] {
  return header
    .replaceAll(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .normalize('NFD').replaceAll(/\p{M}/gu, '').toLowerCase()
    .replaceAll('km/h', ' kmh ').replaceAll('m/s', ' mps ').replaceAll('ft/s', ' fps ').replaceAll('%', ' percent ').replaceAll('°', ' deg ')
    .split(/[^a-z0-9]+/).filter((word) => word !== '');
}

/** The unit that a header names last among those that a field may have; null where it names none. */
export function unitIn(words: readonly string[], units: readonly string[]): string | null {
  const named = words.findLast((word) => units.includes(UNIT_WORDS[word] ?? ''));
  return named === undefined ? null : UNIT_WORDS[named]!;
}

export function sideIn(words: readonly string[]): Side | null {
  return SIDE_WORDS.find(([word]) => words.includes(word))?.[1] ?? null;
}
