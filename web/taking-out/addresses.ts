import type { Units } from '../words/speech.ts';

/** Whose throws are taken out. */
export type Of = { readonly kind: 'all' } | { readonly kind: 'athlete' | 'session'; readonly id: string };

const whose = (of: Of): string => (of.kind === 'all' ? '/api' : `/api/${of.kind}s/${encodeURIComponent(of.id)}`);

/** Where a table of throws is given out. */
export function throwsAddress(of: Of, as: { readonly format: 'csv' | 'parquet'; readonly units: Units; readonly names: boolean }): string {
  return `${whose(of)}/throws?${new URLSearchParams({ format: as.format, units: as.units, names: as.names ? 'yes' : 'no' })}`;
}

/** Where facts are given out. */
export const factsAddress = (of: Of): string => `${whose(of)}/facts`;
