import type { RoutedRun } from './routes.ts';

interface Ran {
  readonly length?: { readonly value: number } | undefined;
  readonly run?: string | undefined;
}

/** How long something is: as typed, or as the run is that it follows. */
export function runLengthOf(
  { length, run }: Ran,
  runs: ReadonlyMap<string, RoutedRun>,
): { readonly lengthM?: number; readonly lengthFrom?: 'typed' | 'route'; readonly run?: RoutedRun } {
  const routed = run === undefined ? undefined : runs.get(run);
  const lengthM = length?.value ?? routed?.lengthM;
  return {
    ...(lengthM !== undefined && { lengthM, lengthFrom: length ? 'typed' : 'route' }),
    ...(routed && { run: routed }),
  };
}
