const narrowest = 60;
const widest = 200;

/** Columns for output; what is piped gets a width that suits a page. */
export function outputWidth(stream: { readonly columns?: number }, environment: NodeJS.ProcessEnv): number {
  const asked = stream.columns ?? Number.parseInt(environment.COLUMNS ?? '', 10);
  return Math.min(widest, Math.max(narrowest, asked > 0 ? asked : 100));
}

/** Colour follows NO_COLOR and FORCE_COLOR (no-color.org, force-color.org), then whether it is a terminal. */
export function wantsColour(stream: { readonly isTTY?: boolean }, environment: NodeJS.ProcessEnv): boolean {
  if (environment.NO_COLOR !== undefined && environment.NO_COLOR !== '') return false;
  const forced = environment.FORCE_COLOR;
  if (forced !== undefined && forced !== '') return forced !== '0' && forced !== 'false';
  return stream.isTTY === true && environment.TERM !== 'dumb';
}
