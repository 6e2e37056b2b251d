/**
 * Whether the content of a YAML file is a plan: one of its lines begins, without indentation, with the key
 * `storystick` and a colon. The key may stand in quotes, or behind a brace that opens the whole plan. It need not be
 * the first, and what is broken elsewhere does not matter: who wrote the key meant a plan.
 *
 * Looked for in the bytes, so that a plan that was saved in a wrong encoding is found, and then refused with a reason.
 */
export function isPlan(content: Uint8Array): boolean {
  // One character for each byte: what matters here is ASCII in every encoding, with zeros between it in UTF-16.
  const text = Buffer.from(content.buffer, content.byteOffset, content.byteLength).toString('latin1');
  return plansKey.test(text.includes('\0') ? text.replaceAll('\0', '') : text);
}

/** Behind the start of a line, and there perhaps a byte order mark of UTF-8 or UTF-16. */
const plansKey = /(?:^|[\r\n])(?:\xEF\xBB\xBF|\xFF\xFE|\xFE\xFF)?(?:\{[ \t]*)?(["']?)storystick\1[ \t]*:/;

/** Whether a file's name is one that plans have. */
export const hasPlanName = (path: string): boolean => /\.ya?ml$/i.test(path);
