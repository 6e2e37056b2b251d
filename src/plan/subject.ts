/** What a path leads to, in words: "fixtures.bed.mass", "material in entry 2 of build_ups.walls.layers". */
export function subjectOf(path: readonly PropertyKey[]): string {
  let words = '';
  for (const part of path) {
    if (typeof part === 'number') words = `entry ${part + 1} of ${words}`;
    else if (words === '') words = String(part);
    else words = words.startsWith('entry ') ? `${String(part)} in ${words}` : `${words}.${String(part)}`;
  }
  return words === '' ? 'the plan' : words;
}

/** A message with what it is about in front, unless it is a sentence of its own. */
export function sentenceAbout(path: readonly PropertyKey[], message: string): string {
  if (/^(?:this|the format) /.test(message)) return message;
  return `${subjectOf(path)}${/^(?:`|the )/.test(message) ? ':' : ''} ${message}`;
}
