import type { Language } from './language.ts';

/** The page that shows every picture in its states. */
const frame = {
  en: {
    title: 'All pictures',
    invented: 'Every picture of Offpace in its states, drawn from invented throws that are the same every time.',
    charts: {
      plane: 'Separation plane', 'plane-hard': 'Separation plane, with reach and what spin does not explain', 'plane-grasped': 'Separation plane, its target under the hand', lettered: 'Trials on the plane', rail: 'Pace rail', trend: 'Window', strip: 'A session along its time',
      plate: 'Plate, seen by the catcher', seams: 'Seam map', gap: 'Gap line', pair: 'Gap lines of two throws', difference: 'Difference of two trials', efficiency: 'Spin efficiency and families', clock: 'Tilt',
    },
  },
  es: {
    title: 'Todos los dibujos',
    invented: 'Cada dibujo de Offpace en sus estados, con tiros inventados que son siempre los mismos.',
    charts: {
      plane: 'Plano de separación', 'plane-hard': 'Plano de separación, con alcance y lo que el giro no explica', 'plane-grasped': 'Plano de separación, con el blanco bajo la mano', lettered: 'Ensayos en el plano', rail: 'Riel de ritmo', trend: 'Ventana', strip: 'Una sesión a lo largo de su tiempo',
      plate: 'El home, visto por el receptor', seams: 'Mapa de costuras', gap: 'Línea de brecha', pair: 'Líneas de brecha de dos tiros', difference: 'Diferencia de dos ensayos', efficiency: 'Eficiencia del giro y familias', clock: 'Eje',
    },
  },
} as const;

/** The states in Spanish; in English each is called by its own name. */
export const STATES_IN_SPANISH: Readonly<Record<string, string>> = {
  empty: 'vacío', few: 'pocos tiros', some: 'dos docenas de tiros', many: 'doscientos tiros', stale: 'sin datos nuevos', inferred: 'inferido', 'no target': 'sin blanco', 'no baseline yet': 'aún sin recta base', 'no band': 'sin banda',
  'a left-hander, with the spread': 'un zurdo, con la dispersión', 'throws missing': 'faltan tiros', settled: 'decidido', 'not settled': 'sin decidir', 'no difference that matters': 'sin diferencia que importe',
  'not known': 'no se conoce', 'below both marks': 'bajo las dos marcas', 'across a mark': 'sobre una marca',
  'last throw above the target': 'último tiro sobre el blanco', 'last throw deep': 'último tiro pasado', 'last throw beside the fastball, a left-hander': 'último tiro junto a la recta, un zurdo', 'arrow without words': 'flecha sin palabras',
  'deep, under the grip of its height': 'pasado, bajo el asidero de la altura', 'beside the grip of its width': 'junto al asidero del ancho', 'deep, arm side': 'pasado, lado del brazo',
  'over the middle': 'por el centro', 'in the dirt': 'en la tierra', 'high and far off': 'alto y lejos', 'beyond the picture': 'fuera del dibujo', 'last place not sent': 'último lugar no enviado',
  'four seams a turn, with all that is known': 'cuatro costuras por vuelta, con todo lo que se sabe', 'two seams a turn': 'dos costuras por vuelta', 'held askew': 'inclinada', 'axis alone, nothing unexplained to be seen': 'solo el eje, sin nada sin explicar a la vista',
  'far apart': 'lejos una de otra', 'hardly apart': 'apenas separadas',
  'hardly any gap': 'casi sin brecha', 'two balls': 'dos bolas', 'early and flat': 'temprana y plana', 'six balls': 'seis bolas', 'fourteen balls': 'catorce bolas', 'moments missing': 'faltan momentos',
};

export function galleryWords(language: Language) {
  return { ...frame[language], state: (name: string): string => (language === 'es' ? STATES_IN_SPANISH[name] ?? name : name) };
}
